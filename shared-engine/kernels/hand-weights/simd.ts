// Writes what the hands of a card weigh into the memory of the SIMD module.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT } from '../../rules/index.ts';
import { rowAt } from '../packed-card.ts';
import type { SimdInstance } from '../simd/host.ts';
import type { WrittenCard } from '../simd/write-card.ts';
import { levelTables, type WeightSteps } from './reference.ts';

/** What the module stores for 16 hands. */
const RECORD_BYTES = 64;
const COUNTS = 16;

/** What a packed row gains where the last tile stands in a single or pair, and how the module names the places. */
const PART_IN_SINGLE = 0x11;
const IN_GROUP = 1;
const IN_SINGLE = 2;

/** For an instance that holds the card. */
export function writeHandWeights(
  simd: SimdInstance,
  card: CompiledCard,
  { packed, rowBytes }: WrittenCard,
  steps: WeightSteps,
): void {
  const { byMatched, byLimit } = levelTables(steps);
  const roomAt = simd.reserve(rowBytes * 2 + (rowBytes / 16) * RECORD_BYTES);
  const addedAt = simd.reserve(rowBytes);
  const tablesAt = simd.reserve(byMatched.length + byLimit.length);
  const places = writePlaces(simd, packed);
  // Views are made after the last call that may have moved the memory.
  const { buffer } = simd.memory;
  const added = new Uint8Array(buffer, addedAt, rowBytes);
  const { patternStarts } = packed;
  for (const [pattern, { concealed }] of card.patterns.entries()) {
    if (concealed) added.fill(steps.concealed, patternStarts[pattern], patternStarts[pattern + 1]);
  }
  new Uint8Array(buffer, tablesAt, byMatched.length + byLimit.length).set([...byMatched, ...byLimit]);
  simd.setHandWeights(roomAt, addedAt, tablesAt, places);
  simd.setWeightSteps(steps.tile, steps.tile + steps.pair);
}

/** For each face and count a row that says where the last of these tiles stands; the address of the table of rows. */
function writePlaces(simd: SimdInstance, { rows, offsets, width }: WrittenCard['packed']): number {
  const bytes = new Uint8Array(rows.buffer, rows.byteOffset, rows.byteLength);
  const rowBytes = width * 4;
  const tableAt = simd.reserve(FACE_COUNT * COUNTS * 4);
  for (let face = 0; face < FACE_COUNT; face++) {
    for (let count = 1; count < COUNTS - 1; count++) {
      const now = offsets[rowAt(face, count)]! * 4;
      const then = offsets[rowAt(face, count - 1)]! * 4;
      if (now === then) continue;
      const rowAddress = simd.reserve(rowBytes);
      const row = new Uint8Array(simd.memory.buffer, rowAddress, rowBytes);
      for (let lane = 0; lane < rowBytes; lane++) {
        const part = bytes[now + lane]! - bytes[then + lane]!;
        if (part > 0) row[lane] = part === PART_IN_SINGLE ? IN_SINGLE : IN_GROUP;
      }
      new Uint32Array(simd.memory.buffer, tableAt, FACE_COUNT * COUNTS)[face * COUNTS + count] = rowAddress;
    }
  }
  return tableAt;
}
