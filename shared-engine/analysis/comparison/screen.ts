// First stage: the field is thinned on shared worlds; nothing that is shown rests on these worlds.
import { RESULT_WIDTH } from '../rollouts/batch.ts';
import type { Alternative } from './alternatives.ts';
import type { Budget } from './budget.ts';
import { meanOf } from './estimate.ts';
import type { WorldSource } from './sampled-deals.ts';

/** So many stay in any case, where the budget has room for them. */
const LEAST = 8;

/**
 * One that is so many standard errors of a difference behind the best is let go (subset selection, after Gupta 1965):
 * a field that the worlds tell apart is thinned early, one that they do not keeps as many as the budget has room for.
 */
const BEHIND = 2.25;

export interface Screened {
  /** Alternatives that stay, most promising first; the one chosen is among them. */
  readonly finalists: readonly Alternative[];
  /** Outlook right after the step, by finalist and batch of the last round: knowledge of the luck of arrivals. */
  readonly luck: readonly Float64Array[];
}

interface Contender {
  readonly alternative: Alternative;
  /** Own outlook at the close, by batch of all rounds. */
  readonly own: Float64Array;
  /** Own outlook right after the step, by batch of the last round. */
  readonly luck: Float64Array;
}

/** The chosen alternative stays in every round, whatever its place. */
export function screen(
  source: WorldSource,
  seat: number,
  alternatives: readonly Alternative[],
  chosen: Alternative,
  { field, rounds }: Budget,
): Screened {
  const none = new Float64Array(0);
  let staying = withChosen(alternatives.slice(0, field), chosen).map(
    (alternative): Contender => ({ alternative, own: none, luck: none }),
  );
  let first = 0;
  for (const { batches, stay } of rounds) {
    const played = playOn(source, seat, staying, first, batches);
    first += batches;
    const order = [...played].sort((a, b) => meanOf(b.own) - meanOf(a.own));
    const bar = meanOf(order[0]!.own) - BEHIND * errorOf(order);
    staying = order.filter(
      ({ alternative, own }, place) =>
        alternative === chosen || place < Math.min(LEAST, stay) || (place < stay && meanOf(own) >= bar),
    );
  }
  return {
    finalists: staying.map(({ alternative }) => alternative),
    luck: rounds.length === 0 ? [] : staying.map(({ luck }) => luck),
  };
}

function playOn(
  source: WorldSource,
  seat: number,
  racing: readonly Contender[],
  first: number,
  batches: number,
): readonly Contender[] {
  const acts = racing.map(
    ({ alternative: { act } }) =>
      () =>
        act,
  );
  const { means } = source.play(first, batches, acts);
  const column = (a: number, part: number): Float64Array =>
    Float64Array.from({ length: batches }, (_, b) => means[(b * racing.length + a) * RESULT_WIDTH + part]!);
  return racing.map(({ alternative, own }, a) => ({
    alternative,
    own: Float64Array.from([...own, ...column(a, seat)]),
    luck: column(a, 4 + seat),
  }));
}

/**
 * Standard error of how far the first is ahead of another, pooled over all others, who all lean on the same few batches:
 * widened by about as much as Student's points are wider than the normal ones. Without bound for a single batch.
 */
function errorOf([best, ...others]: readonly Contender[]): number {
  const batches = best!.own.length;
  if (batches < 2 || others.length === 0) return Infinity;
  let squares = 0;
  for (const { own } of others) {
    const ahead = meanOf(best!.own) - meanOf(own);
    for (let b = 0; b < batches; b++) squares += square(best!.own[b]! - own[b]! - ahead);
  }
  const widened = (batches + 1) / (batches - 1);
  return Math.sqrt((widened * squares) / others.length / (batches - 1) / batches);
}

function withChosen(field: readonly Alternative[], chosen: Alternative): readonly Alternative[] {
  return field.includes(chosen) ? field : [...field, chosen];
}

function square(value: number): number {
  return value * value;
}
