// What a rack's near targets weigh without some of its tiles: in the vector module, or in plain words.
import type { CompiledCard } from '../../card/compiled.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { layCard } from '../simd/card-memory.ts';
import type { Vectors } from '../simd/module.ts';
import { createNear } from './reference.ts';
import { layNear } from './simd-memory.ts';

export interface Uses {
  /** The total, then for each face the total without one and without two of its tiles; not held, not written. */
  readonly weights: Float64Array;
  /** Looks at the rack at `racks[at..at + 36)`. */
  read(racks: Uint8Array, at: number): void;
}

/** Implementations may differ in speed, never in a bit of a result. */
export function createUses(vectors: Vectors, card: CompiledCard): Uses {
  return vectors.kind === 'ready' ? vectorUses(vectors, card) : plainUses(card);
}

function plainUses(card: CompiledCard): Uses {
  const near = createNear(card);
  const weights = new Float64Array(1 + 2 * FACE_COUNT);
  return {
    weights,
    read(racks, at) {
      near.read(racks, at);
      weights[0] = near.total();
      for (let face = 0; face < JOKER_INDEX; face++) {
        for (let copies = 1; copies <= Math.min(2, near.held[face]!); copies++) {
          weights[2 * face + copies] = near.totalWithout(face, copies);
        }
      }
    },
  };
}

function vectorUses(vectors: Extract<Vectors, { kind: 'ready' }>, card: CompiledCard): Uses {
  const module = vectors.instance();
  layNear(module, layCard(module, card));
  const rackAt = module.reserve(FACE_COUNT);
  const outAt = module.reserve((1 + 2 * FACE_COUNT) * 8);
  const rack = new Uint8Array(module.memory.buffer, rackAt, FACE_COUNT);
  return {
    weights: new Float64Array(module.memory.buffer, outAt, 1 + 2 * FACE_COUNT),
    read(racks, at) {
      for (let face = 0; face < FACE_COUNT; face++) rack[face] = racks[at + face]!;
      module.usesOf(rackAt, outAt);
    },
  };
}
