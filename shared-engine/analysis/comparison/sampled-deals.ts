// Sampled deals of a belief played out under many alternatives, summed up batch by batch.
import { type BatchRange, type Belief, DEALS_PER_BATCH } from '../belief/belief.ts';
import type { Situation } from '../belief/situation.ts';
import { ACTION_BYTES, RESULT_WIDTH, type Rollouts } from '../rollouts/batch.ts';

/** The action to try in a deal, by the number of the deal; a mixture may give another one in each. */
export type DealAction = (deal: number) => readonly number[];

export interface Means {
  readonly batches: number;
  readonly actions: number;
  /** Mean win probability of each seat at the close, then right after the step: (batch × actions + action) × 8. */
  readonly means: Float64Array;
}

export interface DealSource {
  /** Batches are the same whatever else is asked for. */
  rollOut(range: BatchRange, actions: readonly DealAction[]): Means;
}

/** The same action in every deal. */
export function always(action: readonly number[]): DealAction {
  return () => action;
}

export function createDealSource(
  { belief, rollouts }: { readonly belief: Belief; readonly rollouts: Rollouts },
  situation: Situation,
  seed: number,
): DealSource {
  return {
    rollOut(range, actions) {
      const count = range.batches * DEALS_PER_BATCH;
      const keys = Uint32Array.from({ length: count }, (_, n) => range.first * DEALS_PER_BATCH + n);
      const bytes = new Int8Array(count * actions.length * ACTION_BYTES);
      for (let n = 0; n < count; n++) {
        for (const [a, action] of actions.entries()) {
          bytes.set(action(keys[n]!), (n * actions.length + a) * ACTION_BYTES);
        }
      }
      const { seat, dealer, terms, step, agreed } = situation;
      const results = rollouts.run({
        seed,
        seat,
        dealer,
        terms,
        step,
        agreed,
        count,
        alternatives: actions.length,
        keys,
        deals: belief.sampledDeals(situation, seed, range),
        actions: bytes,
      });
      return {
        batches: range.batches,
        actions: actions.length,
        means: batchMeans(results, range.batches, actions.length),
      };
    },
  };
}

function batchMeans(results: Float64Array, batches: number, actions: number): Float64Array {
  const means = new Float64Array(batches * actions * RESULT_WIDTH);
  const width = actions * RESULT_WIDTH;
  for (let deal = 0; deal < batches * DEALS_PER_BATCH; deal++) {
    const at = Math.floor(deal / DEALS_PER_BATCH) * width;
    for (let i = 0; i < width; i++) means[at + i]! += results[deal * width + i]! / DEALS_PER_BATCH;
  }
  return means;
}

/** The results of one action by batch: `part` is a seat at the close, or 4 + a seat right after the step. */
export function column({ batches, actions, means }: Means, action: number, part: number): Float64Array {
  return Float64Array.from(
    { length: batches },
    (_, batch) => means[(batch * actions + action) * RESULT_WIDTH + part]!,
  );
}
