// Worlds of a belief played out under many alternatives, summed up batch by batch.
import { BATCH, type Belief } from '../belief/belief.ts';
import type { Situation } from '../belief/situation.ts';
import { ACT_BYTES, type Playouts, RESULT_WIDTH } from '../rollouts/batch.ts';

/** An act for one world; a mixture may give another one in each. */
export type Act = (world: number) => readonly number[];

export interface Means {
  readonly batches: number;
  readonly acts: number;
  /** Mean outlook of each seat at the close, then right after the step: (batch × acts + act) × 8. */
  readonly means: Float64Array;
}

export interface WorldSource {
  /** Batches from `first` on, the same whatever else was asked for. */
  play(first: number, batches: number, acts: readonly Act[]): Means;
}

export function createWorldSource(
  belief: Belief,
  playouts: Playouts,
  situation: Situation,
  seed: number,
): WorldSource {
  return {
    play(first, batches, acts) {
      const count = batches * BATCH;
      const keys = Uint32Array.from({ length: count }, (_, n) => first * BATCH + n);
      const bytes = new Int8Array(count * acts.length * ACT_BYTES);
      for (let n = 0; n < count; n++) {
        for (const [a, act] of acts.entries()) bytes.set(act(keys[n]!), (n * acts.length + a) * ACT_BYTES);
      }
      const { seat, dealer, step, agreed } = situation;
      const worlds = belief.worlds(situation, seed, first, batches);
      const alternatives = acts.length;
      const results = playouts.run({
        seed,
        seat,
        dealer,
        step,
        agreed,
        count,
        alternatives,
        keys,
        worlds,
        acts: bytes,
      });
      return { batches, acts: alternatives, means: batchMeans(results, batches, alternatives) };
    },
  };
}

function batchMeans(results: Float64Array, batches: number, acts: number): Float64Array {
  const means = new Float64Array(batches * acts * RESULT_WIDTH);
  const width = acts * RESULT_WIDTH;
  for (let world = 0; world < batches * BATCH; world++) {
    const at = Math.floor(world / BATCH) * width;
    for (let i = 0; i < width; i++) means[at + i]! += results[world * width + i]! / BATCH;
  }
  return means;
}
