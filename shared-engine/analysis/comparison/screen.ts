// The search: which alternatives are worth a closer look, on shared deals; nothing that is told rests on these deals.
import type { BatchRange } from '../belief/particle-filter.ts';
import type { RolloutEnd } from '../rollouts/batch.ts';
import type { Alternative } from './alternatives.ts';
import type { Budget } from './budget.ts';
import { meanOf } from './estimate.ts';
import { always, column, type DealSource } from './sampled-deals.ts';

/** So many survive in any case, where the budget has room for them. */
const MIN_SURVIVORS = 4;

/**
 * One that is so many standard errors of a difference behind the best is left out (subset selection, after Gupta
 * 1965): alternatives that the deals tell apart are thinned out early, others as far as the budget demands.
 */
const CUTOFF_ERRORS = 2.25;

/** An alternative and what the search saw of it. */
export interface Searched {
  readonly alternative: Alternative;
  /** Own win probability at the close, by batch: the same batches for all finalists; empty where none was played so far. */
  readonly own: Float64Array;
}

export interface Screened {
  /** Alternatives that survive, most promising first; the one chosen is among them. */
  readonly finalists: readonly Searched[];
}

export interface ScreenedChoice {
  readonly alternatives: readonly Alternative[];
  readonly chosen: Alternative;
}

type SearchBudget = Pick<Budget, 'firstBatches' | 'candidates' | 'rounds'>;

const NONE = new Float64Array(0);

/** The chosen alternative survives every round, whatever its place. */
export function screen(
  source: DealSource,
  seat: number,
  { alternatives, chosen }: ScreenedChoice,
  { firstBatches, candidates, rounds }: SearchBudget,
): Screened {
  const valued = byFirstValue(source, seat, alternatives, firstBatches);
  let surviving = withChosen(valued.slice(0, candidates), chosen).map(
    (alternative): Searched => ({ alternative, own: NONE }),
  );
  let first = firstBatches;
  let before: RolloutEnd = 'close';
  for (const { batches, survivors, end = 'close' } of rounds) {
    // What was worth something after the next pass says nothing of how much at the close.
    if (end !== before) surviving = surviving.map((searched) => ({ ...searched, own: NONE }));
    before = end;
    const order = tried(surviving, { source, seat, end }, { first, batches });
    first += batches;
    order.sort((a, b) => meanOf(b.own) - meanOf(a.own));
    const bar = meanOf(order[0]!.own) - CUTOFF_ERRORS * errorOf(order);
    surviving = order.filter(
      ({ alternative, own }, place) =>
        alternative === chosen ||
        place < Math.min(MIN_SURVIVORS, survivors) ||
        (place < survivors && meanOf(own) >= bar),
    );
  }
  return { finalists: surviving };
}

/**
 * Best first by what the table is worth right after the step, whatever arrives: every alternative is looked at before
 * any is left out. In the order given where no batch is meant for that.
 */
function byFirstValue(
  source: DealSource,
  seat: number,
  alternatives: readonly Alternative[],
  batches: number,
): readonly Alternative[] {
  if (batches === 0 || alternatives.length < 2) return alternatives;
  const actions = alternatives.map(({ action }) => always(action));
  const results = source.rollOut({ first: 0, batches }, actions, 'step');
  const values = alternatives.map((_, a) => meanOf(column(results, a, seat)));
  return alternatives
    .map((alternative, a) => ({ alternative, value: values[a]! }))
    .sort((a, b) => b.value - a.value)
    .map(({ alternative }) => alternative);
}

interface Trial {
  readonly source: DealSource;
  readonly seat: number;
  readonly end: RolloutEnd;
}

function tried(candidates: readonly Searched[], { source, seat, end }: Trial, range: BatchRange): Searched[] {
  const actions = candidates.map(({ alternative }) => always(alternative.action));
  const results = source.rollOut(range, actions, end);
  return candidates.map(({ alternative, own }, a) => ({
    alternative,
    own: Float64Array.from([...own, ...column(results, a, seat)]),
  }));
}

/**
 * Standard error of the difference between the first and another, pooled over all others, which share the same few
 * batches: widened by about as much as Student's points exceed the normal ones. Without bound for a single batch.
 */
function errorOf([best, ...others]: readonly Searched[]): number {
  const batches = best!.own.length;
  if (batches < 2 || others.length === 0) return Infinity;
  let squares = 0;
  for (const { own } of others) {
    const difference = meanOf(best!.own) - meanOf(own);
    for (let b = 0; b < batches; b++) {
      const deviation = best!.own[b]! - own[b]! - difference;
      squares += deviation * deviation;
    }
  }
  const widened = (batches + 1) / (batches - 1);
  return Math.sqrt((widened * squares) / others.length / (batches - 1) / batches);
}

function withChosen(candidates: readonly Alternative[], chosen: Alternative): readonly Alternative[] {
  return candidates.includes(chosen) ? candidates : [...candidates, chosen];
}
