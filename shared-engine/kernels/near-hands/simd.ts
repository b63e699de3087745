// Near hands in the SIMD module: for each face and count, the hands in which the last of these tiles is of use.
import { FACE_COUNT } from '../../rules/index.ts';
import { rowAt } from '../packed-card.ts';
import type { SimdInstance } from '../simd/host.ts';
import type { WrittenCard } from '../simd/write-card.ts';
import { WEIGHTS } from './reference.ts';

const COUNTS = 16;

/** What the module stores for each 64 hands, and the distances at which it weighs them. */
const RECORD_BYTES = 72;
const LEVELS = 5;

/** Bytes of a packed row where the last tile stands in a single or pair, and where in a group. */
const IN_SINGLE = 0x11;
const IN_GROUP = 0x10;

/** Writes the sets of hands into an instance that holds the card. */
export function writeNearHands(simd: SimdInstance, { packed, rowBytes }: WrittenCard): void {
  const { rows, offsets } = packed;
  const bytes = new Uint8Array(rows.buffer, rows.byteOffset, rows.byteLength);
  const setBytes = rowBytes / 4;
  const sets: { readonly nth: number; readonly words: Uint32Array }[] = [];
  for (let face = 0; face < FACE_COUNT; face++) {
    for (let count = 1; count < COUNTS - 1; count++) {
      const now = offsets[rowAt(face, count)]! * 4;
      const then = offsets[rowAt(face, count - 1)]! * 4;
      if (now === then) continue;
      const parts = bytes.subarray(now, now + rowBytes).map((byte, lane) => byte - bytes[then + lane]!);
      sets.push({ nth: face * COUNTS + count, words: setsOf(parts) });
    }
  }
  const roomAt = simd.reserve(rowBytes * 2 + (rowBytes / 64) * RECORD_BYTES * 2);
  const tableAt = simd.reserve(FACE_COUNT * COUNTS * 4);
  const setsAt = simd.reserve(sets.length * setBytes);
  const table = new Uint32Array(simd.memory.buffer, tableAt, FACE_COUNT * COUNTS);
  for (const [index, { nth, words }] of sets.entries()) {
    table[nth] = setsAt + index * setBytes;
    new Uint32Array(simd.memory.buffer, setsAt + index * setBytes, words.length).set(words);
  }
  simd.setNearHands(roomAt, tableAt);
  for (let level = 0; level < LEVELS; level++) simd.setWeight(level, WEIGHTS[level]!, WEIGHTS[level + 1]!);
}

/** For each 64 hands two words of 64 bits: where the tile stands in a single or pair, and where in a group. */
function setsOf(parts: Uint8Array): Uint32Array {
  const words = new Uint32Array(parts.length / 16);
  for (const [lane, part] of parts.entries()) {
    const word = (lane >> 6) * 4 + ((lane >> 5) & 1);
    if (part === IN_SINGLE) words[word]! |= 1 << (lane & 31);
    if (part === IN_GROUP) words[word + 2]! |= 1 << (lane & 31);
  }
  return words;
}
