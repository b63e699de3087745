// Playouts inside the vector module: whole batches of worlds and alternatives in one call.
import type { CompiledCard } from '../../card/compiled.ts';
import { layNear } from '../../kernels/near-hands/simd-memory.ts';
import { layCard } from '../../kernels/simd/card-memory.ts';
import type { VectorExports } from '../../kernels/simd/host.ts';
import type { Vectors } from '../../kernels/simd/module.ts';
import { STEPS } from '../../rules/exchange/schedule.ts';
import { OUTLOOK_MODEL } from '../win-probability/model.ts';
import type { OutlookModel } from '../win-probability/model-format.ts';
import { layOutlook } from '../win-probability/simd-memory.ts';
import { createOutlook } from '../win-probability/win-probability.ts';
import { ACT_BYTES, type PlayoutBatch, type Playouts, RESULT_WIDTH, WORLD_BYTES } from './batch.ts';
import { ASK, BLIND, TOWARD, VOTE } from './exchange.ts';
import { GUMBEL } from './noise.ts';
import { createPlayouts } from './reference.ts';
import { outlookLeaf } from './win-probability-leaf.ts';

/** Acts that one call takes. */
const BATCH = 4096;

/** The fastest playouts there are: in the vector module where it is at hand, otherwise in plain words. */
export function createBatchPlayouts(
  vectors: Vectors,
  card: CompiledCard,
  model: OutlookModel = OUTLOOK_MODEL,
): Playouts {
  if (vectors.kind === 'ready') return vectorPlayouts(vectors.instance(), card, model);
  return createPlayouts(card, outlookLeaf(createOutlook(card, model)));
}

function vectorPlayouts(vectors: VectorExports, card: CompiledCard, model: OutlookModel): Playouts {
  const memory = layCard(vectors, card);
  layNear(vectors, memory);
  layOutlook(vectors, card, memory, model);
  laySchedule(vectors);
  const agreedAt = vectors.reserve(4);
  const keysAt = vectors.reserve(BATCH * 4);
  const worldsAt = vectors.reserve(BATCH * WORLD_BYTES);
  const actsAt = vectors.reserve(BATCH * ACT_BYTES);
  const outAt = vectors.reserve(BATCH * RESULT_WIDTH * 8);
  const { buffer } = vectors.memory;
  const agreed = new Uint8Array(buffer, agreedAt, 4);
  const keys = new Uint32Array(buffer, keysAt, BATCH);
  const worlds = new Uint8Array(buffer, worldsAt, BATCH * WORLD_BYTES);
  const acts = new Int8Array(buffer, actsAt, BATCH * ACT_BYTES);
  const results = new Float64Array(buffer, outAt, BATCH * RESULT_WIDTH);

  /** Plays so many worlds from `first` on. */
  function play(batch: PlayoutBatch, first: number, count: number, out: Float64Array): void {
    const { seed, seat, dealer, step, alternatives } = batch;
    const from = first * alternatives;
    const end = from + count * alternatives;
    agreed.set(batch.agreed);
    keys.set(batch.keys.subarray(first, first + count));
    worlds.set(batch.worlds.subarray(first * WORLD_BYTES, (first + count) * WORLD_BYTES));
    acts.set(batch.acts.subarray(from * ACT_BYTES, end * ACT_BYTES));
    vectors.playMany(
      seed,
      seat,
      dealer,
      step,
      agreedAt,
      count,
      alternatives,
      keysAt,
      worldsAt,
      actsAt,
      outAt,
    );
    out.set(results.subarray(0, (end - from) * RESULT_WIDTH), from * RESULT_WIDTH);
  }

  return {
    run(batch) {
      const { count, alternatives } = batch;
      const out = new Float64Array(count * alternatives * RESULT_WIDTH);
      const most = Math.floor(BATCH / alternatives);
      for (let first = 0; first < count; first += most)
        play(batch, first, Math.min(most, count - first), out);
      return out;
    },
  };
}

function laySchedule(vectors: VectorExports): void {
  const tableAt = vectors.reserve(STEPS.length * 2);
  const quantilesAt = vectors.reserve(GUMBEL.byteLength);
  const roomAt = vectors.reserve(vectors.roomForPlaces(STEPS.length));
  const { buffer } = vectors.memory;
  new Uint8Array(buffer, tableAt, STEPS.length * 2).set([...TOWARD, ...BLIND.map(Number)]);
  new Float64Array(buffer, quantilesAt, GUMBEL.length).set(GUMBEL);
  vectors.setQuantiles(quantilesAt);
  vectors.setSchedule(tableAt, STEPS.length, VOTE, ASK, roomAt);
}
