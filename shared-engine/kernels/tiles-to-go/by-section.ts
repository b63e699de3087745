// Which families of hands a rack still points to.
import type { Bag } from '../../rules/tiles/bag.ts';
import type { Kernel } from './kernel.ts';

/** Tiles to go to the nearest line of each family, by family index; 14 for a family without lines. */
export function toGoByFamily(kernel: Kernel, rack: Bag): Uint8Array {
  const result = new Uint8Array(kernel.card.families.length).fill(14);
  const byLine = kernel.toGoByLine(rack);
  for (const [index, { family }] of kernel.card.lines.entries()) {
    result[family] = Math.min(result[family]!, byLine[index]!);
  }
  return result;
}

/** Ids of the families whose nearest line is as near as any, in card order. */
export function nearestFamilies(kernel: Kernel, rack: Bag): string[] {
  return familiesWithin(kernel, rack, 0);
}

/** Ids of the families that are open: within one tile of the nearest, in card order. */
export function openFamilies(kernel: Kernel, rack: Bag): string[] {
  return familiesWithin(kernel, rack, 1);
}

function familiesWithin(kernel: Kernel, rack: Bag, slack: number): string[] {
  const byFamily = toGoByFamily(kernel, rack);
  const least = Math.min(...byFamily);
  return kernel.card.families.filter((_, index) => byFamily[index]! <= least + slack).map(({ id }) => id);
}
