// What the hidden racks may be, given what one seat has seen.
import type { ChoiceModel } from '../../policy/index.ts';
import { FACE_COUNT } from '../../rules/index.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import { type BatchRange, createParticleFilter, DEALS_PER_BATCH } from './particle-filter.ts';
import type { Situation } from './situation.ts';

/**
 * Uses what the seat held, gave and received and how many tiles each seat passed blind. Votes, numbers asked for and
 * the choice to pass blind are not used as evidence.
 */
export interface Belief {
  /**
   * `batches` × `DEALS_PER_BATCH` equally likely deals, each four racks before the step: the seat's own and the
   * hidden ones. A batch is the same whatever else is asked for.
   */
  sampledDeals(situation: Situation, seed: number, range: BatchRange): Uint8Array;
}

export function createBelief(model: ChoiceModel): Belief {
  const filter = createParticleFilter(model);
  return {
    sampledDeals(situation, seed, range) {
      const deals = new Uint8Array(range.batches * DEALS_PER_BATCH * DEAL_BYTES);
      let at = 0;
      filter.sample(situation, seed, range, (histories) => {
        for (const { moves, racks } of histories) {
          deals.set(racks.subarray(moves * DEAL_BYTES), at);
          deals.set(situation.rack, at + situation.seat * FACE_COUNT);
          at += DEAL_BYTES;
        }
      });
      return deals;
    },
  };
}
