// One smooth number for a rack: how near it is to the card as a whole, not only to its nearest hand.
import type { Bag } from '../../rules/index.ts';
import { log2 } from '../portable-math.ts';
import type { Kernel } from './kernel.ts';

/**
 * What a hand one tile further away counts, as a share of the nearer one. Twenty hands at one distance are then
 * worth one tile. Four seats that pass by nearness end no nearer with less softening, and clearly further away with
 * more: `npm run prove -- bots`.
 */
export const SOFTENING = 0.05;

/**
 * Nearness of a rack: 14 minus its softened tiles to go, log(Σ count[d] · w^d) ÷ log w. One unit is one tile: a
 * single hand at distance d gives exactly 14 − d, and every further hand near enough adds a little to that.
 */
export function nearness(kernel: Kernel, rack: Bag, softening: number = SOFTENING): number {
  return nearnessOf(kernel.histogram(rack), softening);
}

/** The same from a histogram of `Kernel`; 0 for a card without hands. */
export function nearnessOf(histogram: Uint32Array, softening: number = SOFTENING): number {
  let sum = 0;
  for (let distance = 14; distance >= 0; distance--) sum = sum * softening + histogram[distance]!;
  return sum === 0 ? 0 : 14 - log2(sum) / log2(softening);
}
