// Which three tiles many racks would let go, seen without error: in the vector module, or in plain words.
import type { CompiledCard } from '../../card/compiled.ts';
import { PASS_SIZE } from '../../rules/exchange/schedule.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';
import { layCard } from '../simd/card-memory.ts';
import type { VectorExports } from '../simd/host.ts';
import type { Vectors } from '../simd/module.ts';
import { letGo } from './pass-selection.ts';
import { createNear } from './reference.ts';
import { layNear } from './simd-memory.ts';

/** Racks that one call takes. */
const BATCH = 1024;

export interface LetGo {
  /** Three faces a rack, least useful first, −1 where nothing but jokers is left. */
  readonly gone: Int8Array;
  /** How many of them, one after another, could be spared. */
  readonly spare: Uint8Array;
}

/** Racks of 36 counts one after another. */
export type Removals = (racks: Uint8Array) => LetGo;

export function createRemovals(vectors: Vectors, card: CompiledCard): Removals {
  return vectors.kind === 'ready' ? vectorRemovals(vectors.instance(), card) : plainRemovals(card);
}

function roomFor(racks: Uint8Array): LetGo & { readonly count: number } {
  const count = Math.floor(racks.length / FACE_COUNT);
  return { count, gone: new Int8Array(count * PASS_SIZE), spare: new Uint8Array(count) };
}

function plainRemovals(card: CompiledCard): Removals {
  const near = createNear(card);
  const noise = new Float64Array(FACE_COUNT);
  return (racks) => {
    const { count, gone, spare } = roomFor(racks);
    for (let nth = 0; nth < count; nth++) {
      near.read(racks, nth * FACE_COUNT);
      spare[nth] = letGo(near, PASS_SIZE, gone, nth * PASS_SIZE, noise, 0);
    }
    return { gone, spare };
  };
}

function vectorRemovals(vectors: VectorExports, card: CompiledCard): Removals {
  layNear(vectors, layCard(vectors, card));
  const racksAt = vectors.reserve(BATCH * FACE_COUNT);
  const noiseAt = vectors.reserve(FACE_COUNT * 8);
  const goneAt = vectors.reserve(BATCH * PASS_SIZE);
  const spareAt = vectors.reserve(BATCH);
  const { buffer } = vectors.memory;
  const asked = new Uint8Array(buffer, racksAt, BATCH * FACE_COUNT);
  const goneHere = new Int8Array(buffer, goneAt, BATCH * PASS_SIZE);
  const spareHere = new Uint8Array(buffer, spareAt, BATCH);
  return (racks) => {
    const { count, gone, spare } = roomFor(racks);
    for (let first = 0; first < count; first += BATCH) {
      const size = Math.min(BATCH, count - first);
      asked.set(racks.subarray(first * FACE_COUNT, (first + size) * FACE_COUNT));
      vectors.letGoMany(racksAt, size, noiseAt, goneAt, spareAt);
      gone.set(goneHere.subarray(0, size * PASS_SIZE), first * PASS_SIZE);
      spare.set(spareHere.subarray(0, size), first);
    }
    return { gone, spare };
  };
}
