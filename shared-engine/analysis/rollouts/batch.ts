// The shape of a batch of playouts: worlds and acts in, outlooks out.
import type { Seat } from '../../rules/deal/seat.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';

/** Bytes of one world: four racks of 36 counts. */
export const WORLD_BYTES = 4 * FACE_COUNT;

/** Numbers of one result: the four outlooks at the close, then the four right after the choice's own step. */
export const RESULT_WIDTH = 8;

/** Bytes of one act: three faces (−1 where none), then a number. */
export const ACT_BYTES = 4;

/**
 * One choice in many worlds. For each world, `alternatives` acts are played out one after another.
 *
 * An act of a pass is its own tiles and how many they are; on a blind step the rest of the three goes on unseen.
 * An act of the vote has the number 1 for go on and 0 for stop; one of the courtesy ask the number asked for.
 */
export interface PlayoutBatch {
  readonly seed: number;
  /** Who chooses. */
  readonly seat: Seat;
  readonly dealer: Seat;
  /** Index into `STEPS` of the step that the choice is made in. */
  readonly step: number;
  /** Tiles agreed on in a courtesy pass, by seat; 0 at every other step. */
  readonly agreed: readonly number[];
  readonly count: number;
  readonly alternatives: number;
  /** Keys of the noise, one a world. */
  readonly keys: Uint32Array;
  /** `count` × `WORLD_BYTES`: racks by seat before the step. */
  readonly worlds: Uint8Array;
  /** `count` × `alternatives` × `ACT_BYTES`. */
  readonly acts: Int8Array;
}

/** Implementations may differ in speed, never in a bit of a result. */
export interface Playouts {
  /** `count` × `alternatives` × `RESULT_WIDTH` chances in 100. */
  run(batch: PlayoutBatch): Float64Array;
}
