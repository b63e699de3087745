// What may arrive: bundles of tiles drawn evenly from those a seat has not seen, the same for every alternative.
import { shuffled, stream } from '../../rules/deal/random.ts';
import { type Bag, facesOf } from '../../rules/tiles/bag.ts';
import { faceIndex } from '../../rules/tiles/face.ts';

/** Fixed for ever, so that the same record gives the same review. */
const SEED = 'review arrivals';

/**
 * `count` bundles of `size` face indexes. They are cut one after another from a shuffle of the unseen tiles, so
 * that no tile arrives more often than it should; when the shuffle is used up a new one follows.
 */
export function arrivals(
  unseen: Bag,
  step: string,
  size: number,
  count: number,
): readonly (readonly number[])[] {
  const random = stream(SEED, step);
  const tiles = facesOf(unseen).map(faceIndex);
  const bundles: (readonly number[])[] = [];
  let left: number[] = [];
  while (bundles.length < count) {
    if (left.length < size) left = shuffled(tiles, random);
    bundles.push(left.slice(0, size));
    left = left.slice(size);
  }
  return bundles;
}
