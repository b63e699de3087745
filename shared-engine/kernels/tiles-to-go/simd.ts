// Tiles to go in the SIMD module: sixteen hands at a time, many racks in one call.
import type { CompiledCard } from '../../card/index.ts';
import { type Bag, FACE_COUNT } from '../../rules/index.ts';
import type { SimdInstance } from '../simd/host.ts';
import type { SimdModule } from '../simd/module.ts';
import { writeCard } from '../simd/write-card.ts';
import type { Kernel } from './kernel.ts';
import { createSwarKernel } from './swar.ts';

const RACKS_PER_CALL = 1024;

/** More tiles of one face than this are of no further use to any hand. */
const MAX_COUNT = 15;

/** A kernel that also simdToGo for many racks at once. */
export interface BatchKernel extends Kernel {
  /** Tiles to go of each rack: racks of 36 counts one after another. */
  toGoMany(racks: Uint8Array): Uint8Array;
}

/** By the SIMD module where the host runs it, otherwise in TypeScript. */
export function createSimdKernel(simd: SimdModule, card: CompiledCard): BatchKernel {
  return simd.kind === 'ready' ? simdKernel(simd.instance(), card) : swarBatchKernel(card);
}

function swarBatchKernel(card: CompiledCard): BatchKernel {
  const kernel = createSwarKernel(card);
  return {
    ...kernel,
    toGoMany: (racks) =>
      Uint8Array.from({ length: Math.floor(racks.length / FACE_COUNT) }, (_, nth) =>
        kernel.toGo(Array.from(racks.subarray(nth * FACE_COUNT, (nth + 1) * FACE_COUNT))),
      ),
  };
}

function simdKernel(simd: SimdInstance, card: CompiledCard): BatchKernel {
  writeCard(simd, card);
  const racksAt = simd.reserve(RACKS_PER_CALL * FACE_COUNT);
  const toGoAt = simd.reserve(RACKS_PER_CALL);
  const patternsAt = simd.reserve(card.patterns.length);
  const histogramAt = simd.reserve(15 * 4);
  const { buffer } = simd.memory;
  const simdRacks = new Uint8Array(buffer, racksAt, RACKS_PER_CALL * FACE_COUNT);
  const simdToGo = new Uint8Array(buffer, toGoAt, RACKS_PER_CALL);
  const byPattern = new Uint8Array(buffer, patternsAt, card.patterns.length);
  const counts = new Uint32Array(buffer, histogramAt, 15);

  function put(rack: Bag): void {
    for (let face = 0; face < FACE_COUNT; face++) simdRacks[face] = Math.min(rack[face]!, MAX_COUNT);
  }

  return {
    card,
    toGo(rack) {
      put(rack);
      return simd.toGo(racksAt);
    },
    toGoByPattern(rack) {
      put(rack);
      simd.toGoByPattern(racksAt, patternsAt);
      return byPattern.slice();
    },
    histogram(rack) {
      put(rack);
      simd.histogram(racksAt, histogramAt);
      return counts.slice();
    },
    toGoMany(racks) {
      const count = Math.floor(racks.length / FACE_COUNT);
      const result = new Uint8Array(count);
      for (let first = 0; first < count; first += RACKS_PER_CALL) {
        const size = Math.min(RACKS_PER_CALL, count - first);
        simdRacks.set(racks.subarray(first * FACE_COUNT, (first + size) * FACE_COUNT));
        simd.toGoMany(racksAt, size, toGoAt);
        result.set(simdToGo.subarray(0, size), first);
      }
      return result;
    },
  };
}
