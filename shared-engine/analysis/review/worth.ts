// What a rack is worth to a review: one number, higher is better, so that a better measure can take its place.
import type { Kernel } from '../../kernels/tiles-to-go/kernel.ts';
import { nearness } from '../../kernels/tiles-to-go/nearness.ts';
import type { Bag } from '../../rules/tiles/bag.ts';

/** The worth of a rack of any size, in tiles. */
export type Worth = (rack: Bag) => number;

export function worthOn(kernel: Kernel): Worth {
  return (rack) => nearness(kernel, rack);
}

/** How many tiles of the rack are no part of its nearest target. */
export function spareTiles(kernel: Kernel, rack: Bag): number {
  const size = rack.reduce((sum, count) => sum + count, 0);
  return Math.max(0, size - (14 - kernel.toGo(rack)));
}
