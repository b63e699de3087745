// The outlook as the playouts ask for it.
import type { Outlook, Place } from '../win-probability/win-probability.ts';
import type { Leaf } from './leaf.ts';

const PLACES: readonly Place[] = [0, 1, 2, 3];

export function outlookLeaf(outlook: Outlook): Leaf {
  return { of: (racks, at, place) => outlook.of(racks, PLACES[place]!, at) };
}
