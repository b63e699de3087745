// Tile values by the SIMD module where the host runs it, otherwise by the reference implementation.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT } from '../../rules/index.ts';
import { writeNearHands } from '../near-hands/simd.ts';
import type { SimdInstance } from '../simd/host.ts';
import type { SimdModule } from '../simd/module.ts';
import { writeCard } from '../simd/write-card.ts';
import { createReferenceTileValues, TILE_VALUE_COUNT, type TileValues } from './reference.ts';

export function createTileValues(simd: SimdModule, card: CompiledCard): TileValues {
  return simd.kind === 'ready' ? simdTileValues(simd.instance(), card) : createReferenceTileValues(card);
}

function simdTileValues(simd: SimdInstance, card: CompiledCard): TileValues {
  writeNearHands(simd, writeCard(simd, card));
  const rackAt = simd.reserve(FACE_COUNT);
  const weightsAt = simd.reserve(TILE_VALUE_COUNT * 8);
  const rack = new Uint8Array(simd.memory.buffer, rackAt, FACE_COUNT);
  return {
    weights: new Float64Array(simd.memory.buffer, weightsAt, TILE_VALUE_COUNT),
    read(racks, at) {
      for (let face = 0; face < FACE_COUNT; face++) rack[face] = racks[at + face]!;
      simd.tileValues(rackAt, weightsAt);
    },
  };
}
