// What letting tiles go needs in the memory of the vector module: which targets a tile is in use for.

import { FACE_COUNT } from '../../rules/tiles/face.ts';
import type { CardMemory } from '../simd/card-memory.ts';
import type { VectorExports } from '../simd/host.ts';
import { MISJUDGED, SPARED } from './pass-selection.ts';
import { WEIGHTS } from './reference.ts';

const COUNTS = 16;

/** What the module keeps for each 64 targets, and the distances at which it weighs them. */
const RECORD_BYTES = 72;
const LEVELS = 5;

/** Bytes of a packed row where the last tile stands in a single or pair, and where in a group. */
const IN_SINGLE = 0x11;
const IN_GROUP = 0x10;

/** Lays the sets out in an instance that holds the card. */
export function layNear(vectors: VectorExports, { packed, rowBytes }: CardMemory): void {
  const { rows, offsets } = packed;
  const bytes = new Uint8Array(rows.buffer, rows.byteOffset, rows.byteLength);
  const pairs = rowBytes / 4;
  const sets: { readonly nth: number; readonly words: Uint32Array }[] = [];
  for (let face = 0; face < FACE_COUNT; face++) {
    for (let count = 1; count < COUNTS - 1; count++) {
      const now = offsets[face * 15 + count]! * 4;
      const then = offsets[face * 15 + count - 1]! * 4;
      if (now !== then) sets.push({ nth: face * COUNTS + count, words: setsOf(bytes, now, then, rowBytes) });
    }
  }
  const roomAt = vectors.reserve(rowBytes * 2 + (rowBytes / 64) * RECORD_BYTES * 2);
  const tableAt = vectors.reserve(FACE_COUNT * COUNTS * 4);
  const setsAt = vectors.reserve(sets.length * pairs);
  const table = new Uint32Array(vectors.memory.buffer, tableAt, FACE_COUNT * COUNTS);
  for (const [index, { nth, words }] of sets.entries()) {
    table[nth] = setsAt + index * pairs;
    new Uint32Array(vectors.memory.buffer, setsAt + index * pairs, words.length).set(words);
  }
  vectors.setNear(roomAt, tableAt);
  for (let level = 0; level < LEVELS; level++) {
    vectors.setWeight(level, WEIGHTS[level]!, WEIGHTS[level + 1]!);
  }
  vectors.setCare(MISJUDGED, SPARED);
}

/** For each 64 targets two words of 64 bits: where the tile stands in a single or pair, and where in a group. */
function setsOf(bytes: Uint8Array, now: number, then: number, rowBytes: number): Uint32Array {
  const words = new Uint32Array(rowBytes / 16);
  for (let lane = 0; lane < rowBytes; lane++) {
    const part = bytes[now + lane]! - bytes[then + lane]!;
    const word = (lane >> 6) * 4 + ((lane >> 5) & 1);
    if (part === IN_SINGLE) words[word]! |= 1 << (lane & 31);
    if (part === IN_GROUP) words[word + 2]! |= 1 << (lane & 31);
  }
  return words;
}
