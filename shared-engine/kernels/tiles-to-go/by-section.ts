// Which sections of hands a rack still points to.
import type { Bag } from '../../rules/index.ts';
import type { Kernel } from './kernel.ts';

/** Tiles to go to the nearest pattern of each section, by section index; 14 for a section without patterns. */
export function toGoBySection(kernel: Kernel, rack: Bag): Uint8Array {
  const result = new Uint8Array(kernel.card.sections.length).fill(14);
  const byPattern = kernel.toGoByPattern(rack);
  for (const [index, { section }] of kernel.card.patterns.entries()) {
    result[section] = Math.min(result[section]!, byPattern[index]!);
  }
  return result;
}

/** Ids of the sections that are open: within one tile of the nearest, in card order. */
export function sectionsInReach(kernel: Kernel, rack: Bag): string[] {
  return sectionsNoFurther(kernel, rack, kernel.toGo(rack) + 1);
}

/** Ids of the sections whose nearest pattern is at most so many tiles away, in card order. */
export function sectionsNoFurther(kernel: Kernel, rack: Bag, most: number): string[] {
  const bySection = toGoBySection(kernel, rack);
  return kernel.card.sections.filter((_, index) => bySection[index]! <= most).map(({ id }) => id);
}
