// How much of a card is within reach of a rack: every target counted, the less the more it still lacks.
import type { CompiledCard } from '../../card/compiled.ts';

/** What halves a target's weight, in quarters of a halving. */
export interface ReachSteps {
  /** For each tile to go. */
  readonly tile: number;
  /** For the first of those that stands in a single or a pair, besides: it can be called when it is the last. */
  readonly pair: number;
  /** For each further one. */
  readonly pairs: number;
  /** For a line that may not be laid open. */
  readonly concealed: number;
}

/** 2³⁴, the weight of a finished target: large, so that weights can be whole numbers and sums of them are exact in any order. */
const WHOLE = 0x4_0000_0000;

/** 2^(−1/4), from square roots alone. */
const QUARTER = Math.sqrt(Math.sqrt(0.5));

/** WHOLE × 2^(−quarters/4), rounded to a whole number. */
function weightAfter(quarters: number): number {
  let weight = WHOLE;
  for (let halving = 4; halving <= quarters; halving += 4) weight /= 2;
  for (let rest = quarters % 4; rest > 0; rest--) weight *= QUARTER;
  return Math.round(weight);
}

/**
 * Weights of one target by its packed byte (see `PackedCard`), for one number of jokers: the byte holds the natural
 * tiles that fit (high nibble) and those that fit where no joker may stand plus all group places (low nibble).
 */
export function weightsFor(steps: ReachSteps, jokers: number, concealed: boolean): Float64Array {
  const weights = new Float64Array(256);
  for (let byte = 0; byte < 256; byte++) {
    const matched = Math.min((byte >> 4) + jokers, byte & 15);
    // A target that nothing fits counts nothing, and neither does a lane that pads a line.
    if (matched === 0) continue;
    const toGo = 14 - matched;
    const inPairs = 14 - (byte & 15);
    const lack = inPairs === 0 ? 0 : steps.pair + (inPairs - 1) * steps.pairs;
    weights[byte] = weightAfter(toGo * steps.tile + lack + (concealed ? steps.concealed : 0));
  }
  return weights;
}

/** Words of the packed rows whose lines are all concealed, or all not. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly concealed: boolean;
}

function stretchesOf(card: CompiledCard, lineStarts: Int32Array): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [index, { concealed }] of card.lines.entries()) {
    const from = lineStarts[index]! / 4;
    const to = lineStarts[index + 1]! / 4;
    const last = stretches.at(-1);
    if (last?.concealed === concealed) stretches[stretches.length - 1] = { ...last, to };
    else stretches.push({ from, to, concealed });
  }
  return stretches;
}

/** The summed weights of all targets, a whole number, given the packed sums of a rack and its jokers. */
export type Reach = (sums: Int32Array, jokers: number) => number;

export function createReach(card: CompiledCard, lineStarts: Int32Array, steps: ReachSteps): Reach {
  const stretches = stretchesOf(card, lineStarts);
  const most = 8;
  const open = Array.from({ length: most + 1 }, (_, jokers) => weightsFor(steps, jokers, false));
  const closed = Array.from({ length: most + 1 }, (_, jokers) => weightsFor(steps, jokers, true));
  return (sums, jokers) => {
    let sum = 0;
    for (const { from, to, concealed } of stretches) {
      const weights = (concealed ? closed : open)[Math.min(jokers, most)]!;
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
