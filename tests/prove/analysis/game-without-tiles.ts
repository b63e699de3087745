// A game without tiles: alternatives whose true values are known, with luck of their own in every batch of deals.
import { DEALS_PER_BATCH } from '../../../shared-engine/analysis/belief/particle-filter.ts';
import type { Alternative } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import type { DealSource } from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import { RESULT_WIDTH } from '../../../shared-engine/analysis/rollouts/batch.ts';
import { createRng } from '../../../shared-engine/kernels/philox.ts';

/** What a task says of a game that gives nothing to anybody. */
export const NO_RECEIVER = { seat: 0, receiver: null, typicalPass: null };

export function alternativesOf(count: number): readonly Alternative[] {
  return Array.from({ length: count }, (_, n) => ({
    tiles: [n],
    number: null,
    action: [n, -1, -1, 1],
    keptValue: -n,
  }));
}

export interface GameTerms {
  readonly seed: number;
  /** Filled with the first batch of every run. */
  readonly firstBatches?: number[];
}

/** Seat 0 ends at 20 + values[n] after alternative n; its luck spreads by 1.7 in 100 a batch. */
export function gameOf(values: readonly number[], { seed, firstBatches }: GameTerms): DealSource {
  return {
    rollOut({ first, batches }, actions) {
      firstBatches?.push(first);
      const deals = batches * DEALS_PER_BATCH;
      const results = new Float64Array(deals * actions.length * RESULT_WIDTH);
      for (let deal = 0; deal < deals; deal++) {
        const batch = first + Math.floor(deal / DEALS_PER_BATCH);
        for (const [a, action] of actions.entries()) {
          const [n] = action.of(deal) as [number];
          const value = 20 + values[n]! + 6 * (createRng(seed, batch * 256 + n).uniform() - 0.5);
          results[(deal * actions.length + a) * RESULT_WIDTH] = value;
        }
      }
      return { deals, actions: actions.length, values: results };
    },
  };
}
