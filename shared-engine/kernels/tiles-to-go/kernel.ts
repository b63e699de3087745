// What is asked of a rack and a card many times a second.
import type { CompiledCard } from '../../card/index.ts';
import type { Bag } from '../../rules/index.ts';

/**
 * Answers about one card. Implementations may differ in speed, never in a result.
 *
 * A rack may hold any number of tiles, so "the rack without three tiles" or "with three more" are racks too.
 * An implementation may remember sums of the rack it was asked about last: a rack that differs from that one by a
 * face or two costs less than any other. Results are fresh and the caller's to change.
 */
export interface Kernel {
  readonly card: CompiledCard;
  /** Tiles to go to the nearest hand, 0–14. */
  toGo(rack: Bag): number;
  /** Tiles to go to the nearest hand of each pattern, by pattern index; 14 for a pattern without hands. */
  toGoByPattern(rack: Bag): Uint8Array;
  /** How many hands are at each distance 0–14; length 15. */
  histogram(rack: Bag): Uint32Array;
}
