// What the outlook looks at in a rack: a few measures that mean the same on every card.

import { log2 } from '../../kernels/log2.ts';
import { shuffled, stream } from '../../rules/deal/random.ts';
import { type Bag, bagOf, FULL_SET, facesOf } from '../../rules/tiles/bag.ts';
import { copiesOf, FACES, JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { PlayCard, Want } from '../play/play-card.ts';
import { createRunningSums } from '../play/running-sums.ts';
import { nearestLanes } from './nearest.ts';
import { createReach, type ReachSteps } from './reach.ts';

/** In this order everywhere: the weights of the model and the rows of its making. */
export const MEASURES = [
  /** Log₂ of the card's reach, as it stands beside the same of the better racks of strangers on this card. */
  'reach',
  'jokers',
  /** Of the targets nearest to the rack: tiles lacking in singles and pairs, on average. */
  'pairLack',
  /** Of the same: the share in lines that may not be laid open. */
  'concealed',
  /** Of the same: unseen copies of a missing tile, on average over the missing tiles. */
  'live',
] as const;
export type MeasureName = (typeof MEASURES)[number];

/**
 * Racks of strangers that a card is made comparable with, and those of them that reach furthest: an exchange leaves
 * racks about as good as these, and they are what a rack competes with.
 */
const STRANGERS = 2000;
const BETTER = 500;

/** Halvings. The cards that the model was made on spread by 0.9 to 1.03; a card of a single line may not spread at all. */
const LEAST_SPREAD = 0.5;

/** What makes the reach of a rack comparable from card to card: (reach − centre) ÷ spread. */
interface Scale {
  readonly centre: number;
  readonly spread: number;
}

export interface Measures {
  /**
   * Measures of the rack of 13 or 14 tiles at `racks[at..at + 36)`, counts by face, in the order of `MEASURES`;
   * the same array every time.
   */
  of(racks: ArrayLike<number>, at?: number): Float64Array;
}

const COPIES = FACES.map(copiesOf);

/** One pass over the targets for `reach`, one that finds the nearest, and a look at those alone. */
export function createMeasures(play: PlayCard, steps: ReachSteps): Measures {
  const { card, width, rows, startRow, offsets, lineStarts, lanes: targets, wants } = play;
  const reachOf = createReach(card, lineStarts, steps);
  const running = createRunningSums(rows, startRow, width);
  const { sums } = running;
  const lanes = new Int32Array(width * 4);
  const result = new Float64Array(MEASURES.length);

  function reach(racks: ArrayLike<number>, at: number): number {
    running.hold((face) => offsets[face * 15 + racks[at + face]!]!);
    return log2(reachOf(sums, racks[at + JOKER_INDEX]!) + 1);
  }

  const { centre, spread } = scaleOf((rack) => reach(rack, 0));

  return {
    of(racks, at = 0) {
      const jokers = racks[at + JOKER_INDEX]!;
      result[0] = (reach(racks, at) - centre) / spread;
      result[1] = jokers;
      const count = nearestLanes(sums, jokers, lanes);
      let pairLack = 0;
      let concealed = 0;
      let missing = 0;
      let live = 0;
      for (let i = 0; i < count; i++) {
        const lane = lanes[i]!;
        pairLack += 14 - ((sums[lane >> 2]! >>> ((lane & 3) * 8)) & 15);
        if (card.lines[targets[lane]!.line]!.concealed) concealed++;
        for (const want of wants[lane]!) {
          const held = racks[at + want.face]!;
          const lack = lackOf(want, held);
          missing += lack;
          live += lack * (COPIES[want.face]! - held);
        }
      }
      result[2] = pairLack / count;
      result[3] = concealed / count;
      result[4] = missing === 0 ? 0 : live / missing;
      return result;
    },
  };
}

/** Natural tiles of one face that a target still lacks, as if no joker stood for any. */
function lackOf({ single, group }: Want, held: number): number {
  return Math.max(0, single + group - held);
}

/** Mean and standard deviation among the better racks of strangers, the same racks for every card. */
export function scaleOf(reach: (rack: Bag) => number): Scale {
  const better = strangers()
    .map(reach)
    .sort((a, b) => b - a)
    .slice(0, BETTER);
  const centre = meanOf(better, (value) => value);
  const spread = Math.sqrt(meanOf(better, (value) => (value - centre) * (value - centre)));
  return { centre, spread: Math.max(LEAST_SPREAD, spread) };
}

function strangers(): Bag[] {
  const random = stream('outlook', 'racks of strangers');
  const tiles = facesOf(FULL_SET);
  return Array.from({ length: STRANGERS }, () => bagOf(shuffled(tiles, random).slice(0, 13)));
}

function meanOf(values: readonly number[], of: (value: number) => number): number {
  return values.reduce((sum, value) => sum + of(value), 0) / values.length;
}
