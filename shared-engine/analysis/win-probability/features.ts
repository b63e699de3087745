// What win probability is computed from: a few features of a rack that mean the same on every card.
import {
  createRunningSums,
  inEachByte,
  largerWord,
  largestByte,
  log2,
  matchedWord,
  reaches,
  rowAt,
} from '../../kernels/index.ts';
import {
  type Bag,
  bagOf,
  copiesOf,
  FACES,
  FULL_SET,
  facesOf,
  JOKER_INDEX,
  shuffled,
  stream,
} from '../../rules/index.ts';
import type { PlayCard, Want } from '../play/play-card.ts';
import { createReach, type ReachSteps } from './reach.ts';

/** In this order everywhere: the weights of the model and the rows it is fitted to. */
export const FEATURES = [
  /** Log₂ of the card's reach, relative to the same of the better random racks on this card. */
  'reach',
  'jokers',
  /** Of the hands nearest to the rack: tiles lacking in singles and pairs, on average. */
  'pairLack',
  /** Of the same: the share in patterns that may not be exposed. */
  'concealed',
  /** Of the same: copies of a missing tile not in the rack, on average over the missing tiles. */
  'live',
  /** What a further joker adds is less than the first, and more where much is within reach. */
  'jokersSquared',
  'reachTimesJokers',
] as const;
export type FeatureName = (typeof FEATURES)[number];

/**
 * Random racks that a card is made comparable with, and those of them that reach furthest: an exchange leaves racks
 * about as good as these, and they are what a rack competes with.
 */
const SAMPLE_RACKS = 2000;
const BEST_RACKS = 500;

/** Fixed, because the model was fitted with it. */
const SAMPLE_SEED = 'win probability';

/** Halvings. The cards that the model was fitted on spread by 0.87 to 1.27; a card of one pattern may not spread at all. */
const LEAST_SPREAD = 0.5;

/** What makes the reach of a rack comparable from card to card: (reach − center) ÷ spread. */
interface Scale {
  readonly center: number;
  readonly spread: number;
}

export interface Features {
  /** Log₂ of how far the better random racks of the card reach: what makes wall games rare. */
  readonly center: number;
  /** Of the rack of 13 or 14 tiles at `racks[at..at + 36)`, in the order of `FEATURES`; the same array every time. */
  of(racks: ArrayLike<number>, at?: number): Float64Array;
}

const COPIES = FACES.map(copiesOf);

/** One pass over the hands for `reach`, one that finds the nearest, and the rest from those alone. */
export function createFeatures(play: PlayCard, steps: ReachSteps): Features {
  const { card, packed, wants } = play;
  const { offsets, width } = packed;
  const reachOf = createReach(card.patterns, packed, steps);
  const running = createRunningSums(packed);
  const { sums } = running;
  const lanes = new Int32Array(width * 4);
  const result = new Float64Array(FEATURES.length);

  function reach(racks: ArrayLike<number>, at: number): number {
    running.update((face) => offsets[rowAt(face, racks[at + face]!)]!);
    return log2(reachOf(sums, racks[at + JOKER_INDEX]!) + 1);
  }

  const { center, spread } = scaleOf((rack) => reach(rack, 0));

  return {
    center,
    of(racks, at = 0) {
      const jokers = racks[at + JOKER_INDEX]!;
      result[0] = (reach(racks, at) - center) / spread;
      result[1] = jokers;
      const count = nearestLanes(sums, jokers, lanes);
      let pairLack = 0;
      let concealed = 0;
      let missing = 0;
      let live = 0;
      for (let i = 0; i < count; i++) {
        const lane = lanes[i]!;
        pairLack += 14 - ((sums[lane >> 2]! >>> ((lane & 3) * 8)) & 15);
        if (card.patterns[play.lanes[lane]!.pattern]!.concealed) concealed++;
        for (const want of wants[lane]!) {
          const held = racks[at + want.face]!;
          const lack = lackOf(want, held);
          missing += lack;
          live += lack * (COPIES[want.face]! - held);
        }
      }
      // Of a card of few hands a rack may fit none.
      result[2] = pairLack / Math.max(1, count);
      result[3] = concealed / Math.max(1, count);
      result[4] = missing === 0 ? 0 : live / missing;
      result[5] = jokers * jokers;
      result[6] = result[0]! * jokers;
      return result;
    },
  };
}

/** Writes the lanes of the hands with the fewest tiles to go to `lanes`; how many there are. */
function nearestLanes(sums: Int32Array, jokers: number, lanes: Int32Array): number {
  const free = inEachByte(jokers);
  let most = 0;
  for (let w = 0; w < sums.length; w++) most = largerWord(most, matchedWord(sums[w]!, free));
  const best = Math.max(1, largestByte(most));
  const bar = inEachByte(best);
  let count = 0;
  for (let w = 0; w < sums.length; w++) {
    const word = matchedWord(sums[w]!, free);
    if (!reaches(word, bar)) continue;
    for (let byte = 0; byte < 4; byte++) {
      if (((word >>> (byte * 8)) & 255) === best) lanes[count++] = w * 4 + byte;
    }
  }
  return count;
}

/** Natural tiles of one face that a hand still lacks, as if no joker stood for any. */
function lackOf({ single, group }: Want, held: number): number {
  return Math.max(0, single + group - held);
}

/** Mean and standard deviation among the better random racks, the same racks for every card. */
export function scaleOf(reach: (rack: Bag) => number): Scale {
  const better = randomRacks()
    .map(reach)
    .sort((a, b) => b - a)
    .slice(0, BEST_RACKS);
  const center = meanOf(better, (value) => value);
  const spread = Math.sqrt(meanOf(better, (value) => (value - center) * (value - center)));
  return { center, spread: Math.max(LEAST_SPREAD, spread) };
}

function randomRacks(): Bag[] {
  const random = stream(SAMPLE_SEED, 'racks of strangers');
  const tiles = facesOf(FULL_SET);
  return Array.from({ length: SAMPLE_RACKS }, () => bagOf(shuffled(tiles, random).slice(0, 13)));
}

function meanOf(values: readonly number[], of: (value: number) => number): number {
  return values.reduce((sum, value) => sum + of(value), 0) / values.length;
}
