// The kernel in the vector module: sixteen targets at a time, many racks in one call.
import type { CompiledCard } from '../../card/compiled.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';
import { layCard } from '../simd/card-memory.ts';
import type { VectorExports } from '../simd/host.ts';
import type { Vectors } from '../simd/module.ts';
import type { Kernel } from './kernel.ts';
import { createKernel } from './swar.ts';

/** Racks that one call takes. */
const BATCH = 1024;

/** More tiles of one face than this are of no more use to any target. */
const MOST = 15;

/** A kernel that also answers for many racks at once. */
export interface BatchKernel extends Kernel {
  /** Tiles to go of each rack: racks of 36 counts one after another. */
  toGoMany(racks: Uint8Array): Uint8Array;
}

/** The fastest kernel there is: in the vector module where it is at hand, otherwise in plain words. */
export function createBatchKernel(vectors: Vectors, card: CompiledCard): BatchKernel {
  return vectors.kind === 'ready' ? vectorKernel(vectors.instance(), card) : plainBatch(card);
}

function plainBatch(card: CompiledCard): BatchKernel {
  const kernel = createKernel(card);
  return {
    ...kernel,
    toGoMany: (racks) =>
      Uint8Array.from({ length: Math.floor(racks.length / FACE_COUNT) }, (_, nth) =>
        kernel.toGo(Array.from(racks.subarray(nth * FACE_COUNT, (nth + 1) * FACE_COUNT))),
      ),
  };
}

function vectorKernel(vectors: VectorExports, card: CompiledCard): BatchKernel {
  layCard(vectors, card);
  const lines = card.lines.length;
  const racksAt = vectors.reserve(BATCH * FACE_COUNT);
  const answersAt = vectors.reserve(BATCH);
  const linesAt = vectors.reserve(lines);
  const histogramAt = vectors.reserve(15 * 4);
  const { buffer } = vectors.memory;
  const asked = new Uint8Array(buffer, racksAt, BATCH * FACE_COUNT);
  const answers = new Uint8Array(buffer, answersAt, BATCH);
  const byLine = new Uint8Array(buffer, linesAt, lines);
  const counts = new Uint32Array(buffer, histogramAt, 15);

  function put(rack: Bag): void {
    for (let face = 0; face < FACE_COUNT; face++) asked[face] = Math.min(rack[face]!, MOST);
  }

  return {
    card,
    toGo(rack) {
      put(rack);
      return vectors.toGo(racksAt);
    },
    toGoByLine(rack) {
      put(rack);
      vectors.toGoByLine(racksAt, linesAt);
      return byLine.slice();
    },
    histogram(rack) {
      put(rack);
      vectors.histogram(racksAt, histogramAt);
      return counts.slice();
    },
    toGoMany(racks) {
      const count = Math.floor(racks.length / FACE_COUNT);
      const result = new Uint8Array(count);
      for (let first = 0; first < count; first += BATCH) {
        const size = Math.min(BATCH, count - first);
        asked.set(racks.subarray(first * FACE_COUNT, (first + size) * FACE_COUNT));
        vectors.toGoMany(racksAt, size, answersAt);
        result.set(answers.subarray(0, size), first);
      }
      return result;
    },
  };
}
