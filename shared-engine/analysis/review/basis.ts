// What a quick review rests on: how closely it looks, what a rack is worth to it, and how its numbers are rounded.
import { type Kernel, nearness } from '../../kernels/index.ts';
import { type Bag, sizeOf } from '../../rules/index.ts';
import type { Basis } from './review.ts';

export const BASIS: Basis = {
  passesTried: 24,
  // 36 bundles of three use 108 tiles; a seat has never seen more than 40 of the 144 that can arrive, so one
  // shuffle of the other tiles is enough and no tile arrives twice.
  arrivals: 36,
  // Six passes of this loss add up to one and a half tiles, more than half of what separates a strong exchange
  // from passing at random (2.5 tiles). It is also where a sentence, which shows tenths, begins to say 0.3.
  smallLoss: 0.25,
};

/**
 * From this loss on the quick answer says that a choice was costly, in tiles: of 31 passes of bots that it says this of,
 * 25 were found costly when they were played on.
 */
export const COSTLY_TILES = 0.5;

/** The worth of a rack of any size, in tiles; higher is better. */
export type Worth = (rack: Bag) => number;

export function worthOn(kernel: Kernel): Worth {
  return (rack) => nearness(kernel, rack);
}

/** How many tiles of the rack are no part of its nearest hand. */
export function spareTiles(kernel: Kernel, rack: Bag): number {
  return Math.max(0, sizeOf(rack) - (14 - kernel.toGo(rack)));
}

/** One decimal, as a sentence shows a number. */
export function inTenths(value: number): string {
  return (Math.round(value * 10) / 10).toFixed(1);
}
