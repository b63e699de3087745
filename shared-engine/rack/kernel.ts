// The door to everything that is asked of a rack and a card, many times a second.
import type { CompiledCard } from '../card/compiled.ts';
import type { Bag } from '../tiles/bag.ts';

/** Answers about one card. Implementations may differ in speed, never in a result. */
export interface Kernel {
  readonly card: CompiledCard;
  /** Tiles to go to the nearest target, 0–14. */
  toGo(rack: Bag): number;
  /** Tiles to go to the nearest target of each line, by line index. */
  toGoByLine(rack: Bag): Uint8Array;
  /** How many targets are at each distance 0–14. */
  histogram(rack: Bag): Uint32Array;
}
