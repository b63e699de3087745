// Writes a card into the memory of an instance of the SIMD module.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT } from '../../rules/index.ts';
import { type PackedCard, packCard, rowAt } from '../packed-card.ts';
import type { SimdInstance } from './host.ts';

/** Four vectors of 16 hands are worked on at a time. */
const ROW_LANES = 64;

const COUNTS = 16;

export interface WrittenCard {
  /** The card as it was written: one lane a hand, no padding between patterns. */
  readonly packed: PackedCard;
  readonly rowBytes: number;
}

/** For a fresh instance, once. */
export function writeCard(simd: SimdInstance, card: CompiledCard): WrittenCard {
  const packed = packCard(card, 1, ROW_LANES);
  const { rows, width, startRow, offsets, patternStarts } = packed;
  const rowsAt = simd.reserve(rows.byteLength);
  const tableAt = simd.reserve(FACE_COUNT * COUNTS * 4);
  const matchedAt = simd.reserve(width * 4);
  const endsAt = simd.reserve(patternStarts.byteLength);
  // Views are made after the last call that may have moved the memory.
  new Int32Array(simd.memory.buffer, rowsAt, rows.length).set(rows);
  const table = new Uint32Array(simd.memory.buffer, tableAt, FACE_COUNT * COUNTS);
  for (let face = 0; face < FACE_COUNT; face++) {
    for (let count = 1; count < COUNTS; count++) {
      const offset = offsets[rowAt(face, count)]!;
      if (offset !== 0) table[face * COUNTS + count] = rowsAt + offset * 4;
    }
  }
  new Int32Array(simd.memory.buffer, endsAt, card.patterns.length).set(patternStarts.subarray(1));
  simd.setCard(width * 4, rowsAt + startRow * 4, rowsAt, tableAt);
  simd.setPatterns(matchedAt, endsAt, card.patterns.length, card.hands.length);
  return { packed, rowBytes: width * 4 };
}
