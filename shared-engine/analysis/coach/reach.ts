// How often each pattern of the card is reached from a rack, in sampled deals: by that the card is put in order, and the coach.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { tilesToGo } from '../../kernels/index.ts';
import {
  addTo,
  type Bag,
  bagOf,
  FACE_COUNT,
  FACES,
  type Face,
  FULL_SET,
  JOKER_INDEX,
  type Random,
  type SeatRecord,
  stream,
} from '../../rules/index.ts';

const SAMPLES = 150;
/** Tiles that still come to a rack: what the rest of the exchange brings, and the draws of a game. */
const OWN_DRAWS = 16;
/** Discards of the others that may complete a group, where the hand is not concealed. */
const DISCARDS = 16;
/** A hand counts as reached with so few tiles missing: complete ones are too rare in a sample to put hands in order. */
const NEARLY = 2;
/** Ways to make a pattern that are farther than the nearest one by more than this are not looked at. */
const SPARE = 1;

export interface Reach {
  /** Samples of 100 in which the pattern was reached. */
  readonly rate: number;
  /** Tiles to go at the end of a sample, on average. */
  readonly left: number;
}

/** By pattern, in the card's own order. `gone` are tiles known to be out of reach. The same rack gives the same answer. */
export function reachOf(card: CompiledCard, rack: Bag, gone: readonly Face[]): readonly Reach[] {
  const candidates = candidatesOf(card, rack);
  const sums = card.patterns.map(() => ({ reached: 0, left: 0 }));
  const random = stream(rack.join(' '), 'reach');
  const pool = tilesLeft(rack, gone);
  for (let sample = 0; sample < SAMPLES; sample++) {
    const drawn = firstOf(pool, OWN_DRAWS + DISCARDS, random);
    const own = addTo(rack, drawn.slice(0, OWN_DRAWS));
    const all = addTo(own, drawn.slice(OWN_DRAWS));
    for (const [pattern, hands] of candidates.entries()) {
      const concealed = card.patterns[pattern]?.concealed === true;
      const left = Math.min(...hands.map((hand) => leftOf(hand, own, concealed ? own : all)));
      const sum = sums[pattern]!;
      sum.left += left;
      if (left <= NEARLY) sum.reached++;
    }
  }
  return sums.map(({ reached, left }) => ({ rate: (100 * reached) / SAMPLES, left: left / SAMPLES }));
}

/** By pattern the ways to make it that are nearest, or nearly so. */
function candidatesOf(card: CompiledCard, rack: Bag): readonly (readonly Hand[])[] {
  const ways = card.hands.map((hand) => ({ hand, toGo: tilesToGo(hand, rack) }));
  const best = card.patterns.map(() => 14);
  for (const { hand, toGo } of ways) best[hand.pattern] = Math.min(best[hand.pattern] ?? 14, toGo);
  const near = card.patterns.map((): Hand[] => []);
  for (const { hand, toGo } of ways) {
    if (toGo <= (best[hand.pattern] ?? 14) + SPARE) near[hand.pattern]?.push(hand);
  }
  return near;
}

/** Singles and pairs come from the own draws alone; a group may be completed by a discard and by jokers. */
function leftOf({ singles, groups }: Hand, own: Bag, forGroups: Bag): number {
  let left = 0;
  let open = 0;
  for (let index = 0; index < FACE_COUNT; index++) {
    const single = singles[index]!;
    const group = groups[index]!;
    if (single > 0) left += Math.max(0, single - own[index]!);
    if (group > 0) open += Math.max(0, group - Math.max(0, forGroups[index]! - single));
  }
  return left + Math.max(0, open - own[JOKER_INDEX]!);
}

function tilesLeft(rack: Bag, gone: readonly Face[]): Face[] {
  const out = bagOf(gone);
  return FACES.flatMap((face, index) => {
    const count = Math.max(0, FULL_SET[index]! - rack[index]! - out[index]!);
    return Array.from({ length: count }, () => face);
  });
}

/** Moves `count` tiles, each equally likely, to the front and answers them. */
function firstOf(pool: Face[], count: number, random: Random): readonly Face[] {
  const drawn = Math.min(count, pool.length);
  for (let place = 0; place < drawn; place++) {
    const other = place + random.below(pool.length - place);
    [pool[place], pool[other]] = [pool[other]!, pool[place]!];
  }
  return pool.slice(0, drawn);
}

/** What this seat has passed on and not got back, where the table lets that be looked up. */
export function tilesGone({ terms, steps }: Pick<SeatRecord, 'terms' | 'steps'>): readonly Face[] {
  const gone: Face[] = [];
  if (!terms.passLog) return gone;
  for (const step of steps) {
    if (step.kind !== 'move') continue;
    gone.push(...step.gave);
    for (const face of step.received) {
      const at = gone.indexOf(face);
      if (at >= 0) gone.splice(at, 1);
    }
  }
  return gone;
}
