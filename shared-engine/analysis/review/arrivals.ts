// What may arrive: bundles of tiles drawn evenly from those a seat has not seen, the same for every alternative.
import { type Bag, faceIndex, facesOf, shuffled, stream } from '../../rules/index.ts';

/** Fixed for ever, so that the same record gives the same review. */
const SEED = 'review arrivals';

export interface ArrivalTerms {
  /** Names the random stream, so that each step has its own. */
  readonly step: string;
  /** Tiles a bundle, and how many bundles. */
  readonly size: number;
  readonly count: number;
}

/**
 * Bundles of face indexes, cut one after another from a shuffle of the hidden tiles, so that no tile arrives more
 * often than it should; when the shuffle is used up a new one follows.
 */
export function arrivals(hidden: Bag, { step, size, count }: ArrivalTerms): readonly (readonly number[])[] {
  const random = stream(SEED, step);
  const tiles = facesOf(hidden).map(faceIndex);
  const bundles: (readonly number[])[] = [];
  let left: number[] = [];
  while (bundles.length < count) {
    if (left.length < size) left = shuffled(tiles, random);
    bundles.push(left.slice(0, size));
    left = left.slice(size);
  }
  return bundles;
}
