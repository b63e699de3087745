// Rollouts in TypeScript. They ship, because a host without SIMD must reach the same bytes, if about nine times slower;
// tests hold the SIMD module against them, bit by bit.
import type { CompiledCard } from '../../card/index.ts';
import type { Selection } from '../../kernels/index.ts';
import { ACTION_BYTES, DEAL_BYTES, type Leaf, RESULT_WIDTH, type Rollouts } from './batch.ts';
import { createExchangeRollout } from './exchange.ts';

export function createReferenceRollouts(card: CompiledCard, leaf: Leaf, policy?: Selection): Rollouts {
  const exchange = createExchangeRollout(card, leaf, policy);
  return {
    run(batch) {
      const { count, alternatives, deals, actions } = batch;
      const out = new Float64Array(count * alternatives * RESULT_WIDTH);
      for (let nth = 0; nth < count * alternatives; nth++) {
        const deal = Math.floor(nth / alternatives);
        if (nth % alternatives === 0) exchange.begin(batch, batch.keys[deal]!);
        exchange.play(
          deals.subarray(deal * DEAL_BYTES, (deal + 1) * DEAL_BYTES),
          actions.subarray(nth * ACTION_BYTES, (nth + 1) * ACTION_BYTES),
          out.subarray(nth * RESULT_WIDTH, (nth + 1) * RESULT_WIDTH),
        );
      }
      return out;
    },
  };
}
