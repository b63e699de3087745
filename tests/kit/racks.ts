// Racks for the kernels, and what a kernel answers about one.
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import type { Kernel } from '../../shared-engine/kernels/tiles-to-go/kernel.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { drawn, type Random } from '../../shared-engine/rules/deal/random.ts';
import { type Bag, bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT } from '../../shared-engine/rules/tiles/face.ts';

/** Racks one after another, 36 counts of a byte each, as batch calls take them. */
export function flatRacks(racks: readonly Bag[]): Uint8Array {
  const flat = new Uint8Array(racks.length * FACE_COUNT);
  for (const [nth, rack] of racks.entries()) flat.set(rack, nth * FACE_COUNT);
  return flat;
}

export function randomRack(random: Random, size: number): Bag {
  return bagOf(drawn(facesOf(FULL_SET), size, random));
}

/** Everything a kernel answers about a rack, as text. */
export function answers(kernel: Kernel, rack: Bag): string {
  return `${kernel.toGo(rack)} | ${kernel.toGoByPattern(rack)} | ${kernel.histogram(rack)}`;
}

/** The same text from the definition, one hand at a time. */
export function answersByDefinition({ patterns, hands }: CompiledCard, rack: Bag): string {
  const byPattern = patterns.map(() => 14);
  const histogram = new Array<number>(15).fill(0);
  for (const hand of hands) {
    const distance = tilesToGo(hand, rack);
    byPattern[hand.pattern] = Math.min(byPattern[hand.pattern]!, distance);
    histogram[distance]!++;
  }
  return `${Math.min(...byPattern)} | ${byPattern} | ${histogram}`;
}
