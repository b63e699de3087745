// Sampled deals of a belief played out under many alternatives, summed up batch by batch.
import type { Belief } from '../belief/belief.ts';
import { type BatchRange, DEALS_PER_BATCH } from '../belief/particle-filter.ts';
import type { Situation } from '../belief/situation.ts';
import {
  ACTION_BYTES,
  type Neighbors,
  RESULT_WIDTH,
  type RolloutEnd,
  type Rollouts,
} from '../rollouts/batch.ts';

/** The action to try in a deal, by the number of the deal; a mixture may give another one in each. */
export interface DealAction {
  /** The same for what is the same in every deal of a situation. */
  readonly key: string;
  of(deal: number): readonly number[];
}

/** The same action in every deal. */
export function always(action: readonly number[]): DealAction {
  return { key: action.join(), of: () => action };
}

/** Chances in 100 to win, of all four seats after every action in every deal. */
export interface Results {
  readonly deals: number;
  readonly actions: number;
  /** (deal × actions + action) × `RESULT_WIDTH`. */
  readonly values: Float64Array;
}

/** What is drawn from where: hidden racks, and what the simulated seats misjudge. */
export interface Seeds {
  /** The same for all steps of a round, so that the belief of one goes on in the next. */
  readonly deals: number;
  readonly noise: number;
}

export interface DealSource {
  /** Batches are the same whatever else is asked for. */
  rollOut(range: BatchRange, actions: readonly DealAction[], end?: RolloutEnd): Results;
}

/** `neighbors` says how the others play on: see `RolloutSetting`. */
export function createDealSource(
  { belief, rollouts }: { readonly belief: Belief; readonly rollouts: Rollouts },
  situation: Situation,
  { deals: dealsSeed, noise }: Seeds,
  neighbors: Neighbors = 'alike',
): DealSource {
  return {
    rollOut(range, actions, end = 'close') {
      const count = range.batches * DEALS_PER_BATCH;
      const keys = Uint32Array.from({ length: count }, (_, n) => range.first * DEALS_PER_BATCH + n);
      const bytes = new Int8Array(count * actions.length * ACTION_BYTES);
      for (let n = 0; n < count; n++) {
        for (const [a, action] of actions.entries()) {
          bytes.set(action.of(keys[n]!), (n * actions.length + a) * ACTION_BYTES);
        }
      }
      const { seat, dealer, terms, step, agreed } = situation;
      const setting = { seed: noise, seat, dealer, terms, step, agreed, end, neighbors };
      const deals = belief.sampledDeals(situation, dealsSeed, range);
      const batch = { ...setting, count, alternatives: actions.length, keys, deals, actions: bytes };
      return { deals: count, actions: actions.length, values: rollouts.run(batch) };
    },
  };
}

/** The means over batches of something that is computed from the results of each deal. */
export function batchMeans({ deals }: Results, of: (deal: number) => number): Float64Array {
  const means = new Float64Array(deals / DEALS_PER_BATCH);
  for (let deal = 0; deal < deals; deal++) {
    means[Math.floor(deal / DEALS_PER_BATCH)]! += of(deal) / DEALS_PER_BATCH;
  }
  return means;
}

/** The chances of one seat after an action, by batch. */
export function column(results: Results, action: number, seat: number): Float64Array {
  const { actions, values } = results;
  return batchMeans(results, (deal) => values[(deal * actions + action) * RESULT_WIDTH + seat]!);
}

/** Who chooses, and who gets the tiles. */
export interface Exchanged {
  readonly seat: number;
  readonly receiver: number;
}

/**
 * By batch, what an action costs the chooser through the receiver alone, compared with the action `baseline`: the
 * chooser's chance if the receiver stood at the close as after the baseline, less its chance as things are.
 */
export function costThroughReceiver(
  results: Results,
  [action, baseline]: readonly [number, number],
  { seat, receiver }: Exchanged,
): Float64Array {
  const { actions, values } = results;
  return batchMeans(results, (deal) => {
    const at = (deal * actions + action) * RESULT_WIDTH;
    const other = (deal * actions + baseline) * RESULT_WIDTH;
    // Weights are told apart by the wall, which weighs the same in every table.
    const scale = wallShare(values, at) / wallShare(values, other);
    const all = 100 - values[at + receiver]! + values[other + receiver]! * scale;
    return (100 * values[at + seat]!) / all - values[at + seat]!;
  });
}

function wallShare(values: Float64Array, at: number): number {
  return 100 - (values[at]! + values[at + 1]! + (values[at + 2]! + values[at + 3]!));
}
