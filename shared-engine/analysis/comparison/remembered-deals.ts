// What was rolled out in a situation is remembered for a while, so that work begins before anybody has chosen.
import { type BatchRange, DEALS_PER_BATCH } from '../belief/particle-filter.ts';
import { RESULT_WIDTH, type RolloutEnd } from '../rollouts/batch.ts';
import type { DealAction, DealSource } from './sampled-deals.ts';

/** Situations remembered where nobody says how many: a megabyte each at most, and those of a few tables that play at once. */
const SITUATIONS = 8;

/** Batches rolled out at once: what is broken off loses no more than that. */
const BATCHES_AT_ONCE = 16;

const BATCH_VALUES = DEALS_PER_BATCH * RESULT_WIDTH;

export interface DealMemory {
  /** Rolls nothing out twice as long as the situation with this key is remembered. */
  sourceFor(key: string, create: () => DealSource): DealSource;
}

/** The latest situations asked for are remembered. */
export function createDealMemory(situations = SITUATIONS): DealMemory {
  const sources = new Map<string, DealSource>();
  return {
    sourceFor(key, create) {
      const source = sources.get(key) ?? remembering(create());
      sources.delete(key);
      sources.set(key, source);
      const [oldest] = sources.keys();
      if (sources.size > situations) sources.delete(oldest!);
      return source;
    },
  };
}

/** The results of one action, by batch. */
type Known = Map<number, Float64Array>;

/** Batches that some actions lack: all from the first one missing to the last. */
interface Gap extends BatchRange {
  readonly actions: DealAction[];
}

/** The same results as those of the source, each of them rolled out once. */
export function remembering(source: DealSource): DealSource {
  const knownOf = new Map<string, Known>();

  function known({ key }: DealAction, end: RolloutEnd): Known {
    const name = `${end} ${key}`;
    const found = knownOf.get(name) ?? new Map<number, Float64Array>();
    knownOf.set(name, found);
    return found;
  }

  function fill(actions: readonly DealAction[], range: BatchRange, end: RolloutEnd): void {
    const { values } = source.rollOut(range, actions, end);
    for (const [a, action] of actions.entries()) {
      const batches = known(action, end);
      for (let batch = 0; batch < range.batches; batch++) {
        const results = new Float64Array(BATCH_VALUES);
        for (let n = 0; n < DEALS_PER_BATCH; n++) {
          const from = ((batch * DEALS_PER_BATCH + n) * actions.length + a) * RESULT_WIDTH;
          results.set(values.subarray(from, from + RESULT_WIDTH), n * RESULT_WIDTH);
        }
        batches.set(range.first + batch, results);
      }
    }
  }

  return {
    rollOut(range, actions, end = 'close') {
      const gaps = new Map<string, Gap>();
      // The same action twice is rolled out once.
      for (const action of new Map(actions.map((each) => [each.key, each])).values()) {
        const gap = gapIn(known(action, end), range.first, range.first + range.batches);
        if (gap === null) continue;
        const key = `${gap.first} ${gap.batches}`;
        if (!gaps.has(key)) gaps.set(key, { ...gap, actions: [] });
        gaps.get(key)!.actions.push(action);
      }
      for (const { first, batches, actions } of gaps.values()) {
        for (let at = 0; at < batches; at += BATCHES_AT_ONCE) {
          fill(actions, { first: first + at, batches: Math.min(BATCHES_AT_ONCE, batches - at) }, end);
        }
      }
      const deals = range.batches * DEALS_PER_BATCH;
      const values = new Float64Array(deals * actions.length * RESULT_WIDTH);
      for (const [a, action] of actions.entries()) {
        const batches = known(action, end);
        for (let deal = 0; deal < deals; deal++) {
          const results = batches.get(range.first + Math.floor(deal / DEALS_PER_BATCH))!;
          const from = (deal % DEALS_PER_BATCH) * RESULT_WIDTH;
          values.set(results.subarray(from, from + RESULT_WIDTH), (deal * actions.length + a) * RESULT_WIDTH);
        }
      }
      return { deals, actions: actions.length, values };
    },
  };
}

/** Null where none is missing. */
function gapIn(known: Known, from: number, to: number): BatchRange | null {
  let first = from;
  let end = to;
  while (first < end && known.has(first)) first++;
  while (end > first && known.has(end - 1)) end--;
  return first === end ? null : { first, batches: end - first };
}
