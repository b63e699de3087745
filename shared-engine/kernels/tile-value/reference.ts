// What the tiles of a rack are worth to its near hands: their weight, and their weight without one or two of a face.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { createNearHands } from '../near-hands/reference.ts';

/** The total, then for each face the total without one and without two of its tiles. */
export const TILE_VALUE_COUNT = 1 + 2 * FACE_COUNT;

/** Implementations may differ in speed, never in a bit of a result. */
export interface TileValues {
  /** `TILE_VALUE_COUNT` weights of the rack read last; where no tile is held, nothing is written. */
  readonly weights: Float64Array;
  /** Reads the rack at `racks[at..at + 36)`. */
  read(racks: Uint8Array, at: number): void;
}

export function createReferenceTileValues(card: CompiledCard): TileValues {
  const near = createNearHands(card);
  const weights = new Float64Array(TILE_VALUE_COUNT);
  return {
    weights,
    read(racks, at) {
      near.read(racks, at);
      weights[0] = near.total();
      for (let face = 0; face < JOKER_INDEX; face++) {
        for (let copies = 1; copies <= Math.min(2, near.held[face]!); copies++) {
          weights[2 * face + copies] = near.totalWithout(face, copies);
        }
      }
    },
  };
}
