// Pass selection in the SIMD module: the passes of many racks in one call.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT, PASS_SIZE } from '../../rules/index.ts';
import { writeHandWeights } from '../hand-weights/simd.ts';
import type { SimdInstance } from '../simd/host.ts';
import type { SimdModule } from '../simd/module.ts';
import { type WrittenCard, writeCard } from '../simd/write-card.ts';
import { FITTED_SELECTION } from './fitted.ts';
import { createReferencePassSelector, NOISE_SCALE, type PassSelector, roomForPasses } from './reference.ts';
import type { Selection } from './selection.ts';

const RACKS_PER_CALL = 1024;

/** By the SIMD module where the host runs it, otherwise by the reference implementation. */
export function createPassSelector(simd: SimdModule, card: CompiledCard): PassSelector {
  return simd.kind === 'ready' ? simdPassSelector(simd.instance(), card) : createReferencePassSelector(card);
}

/** Prepares an instance that holds the card. */
export function writePassSelection(
  simd: SimdInstance,
  card: CompiledCard,
  written: WrittenCard,
  { steps, spareShare }: Selection = FITTED_SELECTION,
): void {
  writeHandWeights(simd, card, written, steps);
  simd.setPassSelection(NOISE_SCALE, spareShare);
}

function simdPassSelector(simd: SimdInstance, card: CompiledCard): PassSelector {
  writePassSelection(simd, card, writeCard(simd, card));
  const racksAt = simd.reserve(RACKS_PER_CALL * FACE_COUNT);
  const noiseAt = simd.reserve(FACE_COUNT * 8);
  const tilesAt = simd.reserve(RACKS_PER_CALL * PASS_SIZE);
  const spareAt = simd.reserve(RACKS_PER_CALL);
  const { buffer } = simd.memory;
  const simdRacks = new Uint8Array(buffer, racksAt, RACKS_PER_CALL * FACE_COUNT);
  const simdTiles = new Int8Array(buffer, tilesAt, RACKS_PER_CALL * PASS_SIZE);
  const simdSpare = new Uint8Array(buffer, spareAt, RACKS_PER_CALL);
  return (racks) => {
    const { count, tiles, spare } = roomForPasses(racks);
    for (let first = 0; first < count; first += RACKS_PER_CALL) {
      const size = Math.min(RACKS_PER_CALL, count - first);
      simdRacks.set(racks.subarray(first * FACE_COUNT, (first + size) * FACE_COUNT));
      simd.selectPasses(racksAt, size, noiseAt, tilesAt, spareAt);
      tiles.set(simdTiles.subarray(0, size * PASS_SIZE), first * PASS_SIZE);
      spare.set(simdSpare.subarray(0, size), first);
    }
    return { tiles, spare };
  };
}
