// What the hidden racks may be, given what one seat has seen: sequential Monte Carlo in small independent batches.

import type { ChoiceModel } from '../../policy/choice-model.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';
import { WORLD_BYTES } from '../rollouts/batch.ts';
import { createExtending } from './extend.ts';
import { copyHistory, createHistory, type History } from './history.ts';
import { place } from './placing.ts';
import { createDraws, type Draws } from './rng.ts';
import type { Situation } from './situation.ts';
import { createSwapping } from './swapping.ts';

/** Worlds of one batch. Worlds of a batch lean on each other; batches never do. */
export const BATCH = 8;

/** Swaps proposed for each world after each move, and once more at the end. */
const SWAPS_A_MOVE = 6;
const SWAPS_AT_END = 12;

/**
 * Uses what the seat held, gave and received and how many tiles each seat passed on unseen. Votes, numbers asked
 * and the choice to pass blind are not used as evidence.
 */
export interface Belief {
  /**
   * `batches` × `BATCH` equally likely worlds, each four racks before the step: the seat's own and the hidden ones.
   * Batch `first + n` is the same whatever else was asked for.
   */
  worlds(situation: Situation, seed: number, first: number, batches: number): Uint8Array;
}

export function createBelief(model: ChoiceModel): Belief {
  const { extend } = createExtending(model);
  const { propose } = createSwapping(model);

  function batch(situation: Situation, draws: Draws): readonly History[] {
    const fresh = (): History[] => Array.from({ length: BATCH }, () => createHistory(situation));
    let histories = fresh();
    let spare = fresh();
    const weights = new Float64Array(BATCH).fill(1);
    const resample = (): void => {
      resampled(histories, weights, spare, draws);
      [histories, spare] = [spare, histories];
      weights.fill(1);
    };
    const swap = (times: number, until: number): void => {
      for (const history of histories) {
        for (let n = 0; n < times; n++) propose(history, situation, until, draws);
      }
    };
    for (const history of histories) place(history, situation, draws);
    for (let move = 0; move < situation.past.length; move++) {
      for (const [n, history] of histories.entries()) {
        weights[n]! *= extend(history, situation, move, draws);
      }
      if (effective(weights) < BATCH / 2) resample();
      swap(SWAPS_A_MOVE, move + 1);
    }
    if (situation.past.length > 0) {
      resample();
      swap(SWAPS_AT_END, situation.past.length);
    }
    return histories;
  }

  return {
    worlds(situation, seed, first, batches) {
      const worlds = new Uint8Array(batches * BATCH * WORLD_BYTES);
      let at = 0;
      for (let n = 0; n < batches; n++) {
        for (const { moves, racks } of batch(situation, createDraws(seed, first + n))) {
          worlds.set(racks.subarray(moves * WORLD_BYTES), at);
          worlds.set(situation.rack, at + situation.seat * FACE_COUNT);
          at += WORLD_BYTES;
        }
      }
      return worlds;
    },
  };
}

/** Effective number of equally weighted worlds: (Σw)² ÷ Σw². */
function effective(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const weight of weights) {
    sum += weight;
    squares += weight * weight;
  }
  return squares === 0 ? 0 : (sum * sum) / squares;
}

/** Systematic resampling; where every weight is 0 all stay. */
function resampled(
  from: readonly History[],
  weights: Float64Array,
  to: readonly History[],
  draws: Draws,
): void {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const start = draws.uniform();
  let source = 0;
  let passed = weights[0]!;
  for (const [n, history] of to.entries()) {
    const mark = ((n + start) / from.length) * total;
    while (total > 0 && passed <= mark && source < from.length - 1) passed += weights[++source]!;
    copyHistory(from[total > 0 ? source : n]!, history);
  }
}
