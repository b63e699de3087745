// Racks laid one after another, 36 counts of a byte each, as batch calls take them.
import type { Bag } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT } from '../../shared-engine/rules/tiles/face.ts';

export function flatRacks(racks: readonly Bag[]): Uint8Array {
  const flat = new Uint8Array(racks.length * FACE_COUNT);
  for (const [nth, rack] of racks.entries()) flat.set(rack, nth * FACE_COUNT);
  return flat;
}
