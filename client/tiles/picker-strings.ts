// What the page says where tiles are picked from the set.
import type { LaidProblem } from '../../shared-engine/index.ts';
import { capitalize, tileName } from './tile-names.ts';

export const PICKER = {
  tap: 'Tap a tile below to lay it here. Tap it here to take it away.',
  set: 'The set',
} as const;

/** `11 of 13`. */
export function laidOf(laid: number, size: number): string {
  return `${laid} of ${size}`;
}

/** `1 bam: There are 4 of this tile in the set, and here are 5.` */
export function laidProblemWords({ code, tile, message }: LaidProblem): string {
  return tile && code === 'too-many-copies' ? `${capitalize(tileName(tile))}: ${message}` : message;
}

/** What a tile of the set is called, with how many more can be laid. */
export function pickName(name: string, left: number): string {
  return left === 0 ? `${name}, none left` : `${name}, ${left} left`;
}
