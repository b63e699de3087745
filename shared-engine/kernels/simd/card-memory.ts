// A card laid out in the memory of an instance of the vector module.
import type { CompiledCard } from '../../card/compiled.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';
import { type PackedCard, packCard } from '../packed-card.ts';
import type { VectorExports } from './host.ts';

/** Four vectors of 16 targets are worked on at a time. */
const ROW_LANES = 64;

const COUNTS = 16;

export interface CardMemory {
  /** The card as it was laid out: one lane a target, no padding between lines. */
  readonly packed: PackedCard;
  readonly rowBytes: number;
}

/** Lays the card out in a fresh instance. */
export function layCard(vectors: VectorExports, card: CompiledCard): CardMemory {
  const packed = packCard(card, 1, ROW_LANES);
  const { rows, width, startRow, offsets, lineStarts } = packed;
  const rowsAt = vectors.reserve(rows.byteLength);
  const tableAt = vectors.reserve(FACE_COUNT * COUNTS * 4);
  const roomAt = vectors.reserve(width * 4);
  const endsAt = vectors.reserve(lineStarts.byteLength);
  // Views are made after the last call that may have moved the memory.
  new Int32Array(vectors.memory.buffer, rowsAt, rows.length).set(rows);
  const table = new Uint32Array(vectors.memory.buffer, tableAt, FACE_COUNT * COUNTS);
  for (let face = 0; face < FACE_COUNT; face++) {
    for (let count = 1; count < COUNTS; count++) {
      const offset = offsets[face * 15 + Math.min(count, 14)]!;
      if (offset !== 0) table[face * COUNTS + count] = rowsAt + offset * 4;
    }
  }
  new Int32Array(vectors.memory.buffer, endsAt, card.lines.length).set(lineStarts.subarray(1));
  vectors.setCard(width * 4, rowsAt + startRow * 4, rowsAt, tableAt);
  vectors.setLines(roomAt, endsAt, card.lines.length, card.targets.length);
  return { packed, rowBytes: width * 4 };
}
