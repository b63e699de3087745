// How much of a card is within reach of a rack: every hand counts, the less the more it still lacks.
import type { CompiledPattern } from '../../card/index.ts';
import type { PackedCard } from '../../kernels/index.ts';

/** What lowers a hand's weight, in quarters of a halving. */
export interface ReachSteps {
  /** For each tile to go. */
  readonly tile: number;
  /** For the first of those that stands in a single or a pair, in addition: it can be called when it is the last. */
  readonly pair: number;
  /** For each further one. */
  readonly pairs: number;
  /** For a pattern that may not be exposed. */
  readonly concealed: number;
}

/** 2³⁴, the weight of a finished hand: large, so that weights are whole numbers and sums of them exact in any order. */
const WHOLE = 0x4_0000_0000;

/** 2^(−1/4), from square roots alone. */
const QUARTER = Math.sqrt(Math.sqrt(0.5));

/** More jokers than this weigh the same. */
const MOST_JOKERS = 8;

/** WHOLE × 2^(−quarters/4), rounded to a whole number. */
function weightAfter(quarters: number): number {
  let weight = WHOLE;
  for (let halving = 4; halving <= quarters; halving += 4) weight /= 2;
  for (let rest = quarters % 4; rest > 0; rest--) weight *= QUARTER;
  return Math.round(weight);
}

/**
 * Weights of one hand by its packed byte (see `PackedCard`), for one number of jokers: the byte holds the natural
 * tiles that fit (high nibble) and those that fit where no joker may stand plus all group places (low nibble).
 */
function weightsFor(steps: ReachSteps, jokers: number, concealed: boolean): Float64Array {
  const weights = new Float64Array(256);
  for (let byte = 0; byte < 256; byte++) {
    const matched = Math.min((byte >> 4) + jokers, byte & 15);
    // A hand that nothing fits counts nothing, and neither does a lane that pads a pattern.
    if (matched === 0) continue;
    const toGo = 14 - matched;
    const inPairs = 14 - (byte & 15);
    const lack = inPairs === 0 ? 0 : steps.pair + (inPairs - 1) * steps.pairs;
    weights[byte] = weightAfter(toGo * steps.tile + lack + (concealed ? steps.concealed : 0));
  }
  return weights;
}

/** For 0 to 8 jokers, the weights of a hand of an exposed pattern, then of a concealed one. */
export function reachTables(steps: ReachSteps): readonly (readonly [Float64Array, Float64Array])[] {
  return Array.from({ length: MOST_JOKERS + 1 }, (_, jokers) => [
    weightsFor(steps, jokers, false),
    weightsFor(steps, jokers, true),
  ]);
}

/** Neighboring lanes whose patterns are all concealed, or all not. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly concealed: boolean;
}

export function spansOf(
  patterns: readonly CompiledPattern[],
  { patternStarts }: PackedCard,
): readonly Span[] {
  const spans: Span[] = [];
  for (const [index, { concealed }] of patterns.entries()) {
    const to = patternStarts[index + 1]!;
    const last = spans.at(-1);
    if (last?.concealed === concealed) spans[spans.length - 1] = { ...last, to };
    else spans.push({ from: patternStarts[index]!, to, concealed });
  }
  return spans;
}

/** The summed weights of all hands, a whole number, given the packed sums of a rack and its jokers. */
export type Reach = (sums: Int32Array, jokers: number) => number;

export function createReach(
  patterns: readonly CompiledPattern[],
  packed: PackedCard,
  steps: ReachSteps,
): Reach {
  // Patterns start at whole words of four lanes.
  const spans = spansOf(patterns, packed).map(({ from, to, concealed }) => ({
    from: from / 4,
    to: to / 4,
    concealed,
  }));
  const tables = reachTables(steps);
  return (sums, jokers) => {
    const [exposed, closed] = tables[Math.min(jokers, MOST_JOKERS)]!;
    let sum = 0;
    for (const { from, to, concealed } of spans) {
      const weights = concealed ? closed : exposed;
      for (let w = from; w < to; w++) {
        const word = sums[w]!;
        sum +=
          weights[word & 255]! +
          weights[(word >>> 8) & 255]! +
          weights[(word >>> 16) & 255]! +
          weights[word >>> 24]!;
      }
    }
    return sum;
  };
}
