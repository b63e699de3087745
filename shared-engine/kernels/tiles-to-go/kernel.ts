// The door to everything that is asked of a rack and a card, many times a second.
import type { CompiledCard } from '../../card/compiled.ts';
import type { Bag } from '../../rules/tiles/bag.ts';

/**
 * Answers about one card. Implementations may differ in speed, never in a result.
 *
 * A rack may hold any number of tiles, so "the rack without three tiles" or "with three more" are racks too.
 * An implementation may keep sums of the rack it was asked about last: asking about a rack that differs from it
 * by a face or two is cheaper than asking about a stranger. Results are fresh and the caller's to keep.
 */
export interface Kernel {
  readonly card: CompiledCard;
  /** Tiles to go to the nearest target, 0–14. */
  toGo(rack: Bag): number;
  /** Tiles to go to the nearest target of each line, by line index; 14 for a line without targets. */
  toGoByLine(rack: Bag): Uint8Array;
  /** How many targets are at each distance 0–14; length 15. */
  histogram(rack: Bag): Uint32Array;
}
