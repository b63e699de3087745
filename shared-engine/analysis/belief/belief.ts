// What the hidden racks may be, given what one seat has seen: sequential Monte Carlo in small independent batches.
import { createRng, type Rng } from '../../kernels/index.ts';
import type { ChoiceModel } from '../../policy/index.ts';
import { FACE_COUNT } from '../../rules/index.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import { copyHistory, createHistory, type TileHistory } from './history.ts';
import { initializeHistory } from './initial-history.ts';
import { createMoveSampler } from './move-sampler.ts';
import type { Situation } from './situation.ts';
import { createSwapProposal } from './swap-proposal.ts';

/** Deals of one batch depend on each other; batches never do. */
export const DEALS_PER_BATCH = 8;

/** Swaps proposed for each deal after each move, and once more at the end. */
const SWAPS_PER_MOVE = 6;
const SWAPS_AT_END = 12;

/** So many batches, numbered from `first`. */
export interface BatchRange {
  readonly first: number;
  readonly batches: number;
}

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
  const { sampleMove } = createMoveSampler(model);
  const { propose } = createSwapProposal(model);

  function sampleBatch(situation: Situation, rng: Rng): readonly TileHistory[] {
    const fresh = (): TileHistory[] =>
      Array.from({ length: DEALS_PER_BATCH }, () => createHistory(situation));
    let histories = fresh();
    let spare = fresh();
    const weights = new Float64Array(DEALS_PER_BATCH).fill(1);
    const resample = (): void => {
      resampleInto(spare, histories, weights, rng);
      [histories, spare] = [spare, histories];
      weights.fill(1);
    };
    const swap = (times: number, until: number): void => {
      for (const history of histories) {
        for (let n = 0; n < times; n++) propose(history, until, rng);
      }
    };
    for (const history of histories) initializeHistory(history, rng);
    for (let move = 0; move < situation.past.length; move++) {
      for (const [n, history] of histories.entries()) weights[n]! *= sampleMove(history, move, rng);
      if (effectiveSize(weights) < DEALS_PER_BATCH / 2) resample();
      swap(SWAPS_PER_MOVE, move + 1);
    }
    if (situation.past.length > 0) {
      resample();
      swap(SWAPS_AT_END, situation.past.length);
    }
    return histories;
  }

  return {
    sampledDeals(situation, seed, { first, batches }) {
      const deals = new Uint8Array(batches * DEALS_PER_BATCH * DEAL_BYTES);
      let at = 0;
      for (let n = 0; n < batches; n++) {
        for (const { moves, racks } of sampleBatch(situation, createRng(seed, first + n))) {
          deals.set(racks.subarray(moves * DEAL_BYTES), at);
          deals.set(situation.rack, at + situation.seat * FACE_COUNT);
          at += DEAL_BYTES;
        }
      }
      return deals;
    },
  };
}

/** Effective number of equally weighted deals: (Σw)² ÷ Σw². */
function effectiveSize(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const weight of weights) {
    sum += weight;
    squares += weight * weight;
  }
  return squares === 0 ? 0 : (sum * sum) / squares;
}

/** Systematic resampling; where every weight is 0 all stay. */
function resampleInto(
  to: readonly TileHistory[],
  from: readonly TileHistory[],
  weights: Float64Array,
  rng: Rng,
): void {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const start = rng.uniform();
  let source = 0;
  let passed = weights[0]!;
  for (const [n, history] of to.entries()) {
    const mark = ((n + start) / from.length) * total;
    while (total > 0 && passed <= mark && source < from.length - 1) passed += weights[++source]!;
    copyHistory(from[total > 0 ? source : n]!, history);
  }
}
