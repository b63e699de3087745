// Screening: the alternatives are thinned out on shared deals; nothing that is shown rests on these deals.
import type { Alternative } from './alternatives.ts';
import type { Budget } from './budget.ts';
import { meanOf } from './estimate.ts';
import { always, column, type DealSource } from './sampled-deals.ts';

/** So many survive in any case, where the budget has room for them. */
const MIN_SURVIVORS = 8;

/**
 * One that is so many standard errors of a difference behind the best is left out (subset selection, after Gupta
 * 1965): alternatives that the deals tell apart are thinned out early, others as far as the budget demands.
 */
const CUTOFF_ERRORS = 2.25;

export interface Screened {
  /** Alternatives that survive, most promising first; the one chosen is among them. */
  readonly finalists: readonly Alternative[];
  /** Win probability right after the step, by finalist and batch of the last round. */
  readonly controls: readonly Float64Array[];
}

interface Candidate {
  readonly alternative: Alternative;
  /** Own win probability at the close, by batch of all rounds. */
  readonly own: Float64Array;
  /** Own win probability right after the step, by batch of the last round. */
  readonly controls: Float64Array;
}

/** The chosen alternative survives every round, whatever its place. */
export function screen(
  source: DealSource,
  seat: number,
  { alternatives, chosen }: { readonly alternatives: readonly Alternative[]; readonly chosen: Alternative },
  { candidates, rounds }: Pick<Budget, 'candidates' | 'rounds'>,
): Screened {
  const none = new Float64Array(0);
  let surviving = withChosen(alternatives.slice(0, candidates), chosen).map(
    (alternative): Candidate => ({ alternative, own: none, controls: none }),
  );
  let first = 0;
  for (const { batches, survivors } of rounds) {
    const played = tried(surviving, source, seat, { first, batches });
    first += batches;
    const order = [...played].sort((a, b) => meanOf(b.own) - meanOf(a.own));
    const bar = meanOf(order[0]!.own) - CUTOFF_ERRORS * errorOf(order);
    surviving = order.filter(
      ({ alternative, own }, place) =>
        alternative === chosen ||
        place < Math.min(MIN_SURVIVORS, survivors) ||
        (place < survivors && meanOf(own) >= bar),
    );
  }
  return {
    finalists: surviving.map(({ alternative }) => alternative),
    controls: rounds.length === 0 ? [] : surviving.map(({ controls }) => controls),
  };
}

function tried(
  candidates: readonly Candidate[],
  source: DealSource,
  seat: number,
  range: { readonly first: number; readonly batches: number },
): readonly Candidate[] {
  const results = source.rollOut(
    range,
    candidates.map(({ alternative }) => always(alternative.action)),
  );
  return candidates.map(({ alternative, own }, a) => ({
    alternative,
    own: Float64Array.from([...own, ...column(results, a, seat)]),
    controls: column(results, a, 4 + seat),
  }));
}

/**
 * Standard error of the difference between the first and another, pooled over all others, which share the same few
 * batches: widened by about as much as Student's points exceed the normal ones. Without bound for a single batch.
 */
function errorOf([best, ...others]: readonly Candidate[]): number {
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
