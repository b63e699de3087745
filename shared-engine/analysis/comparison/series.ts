// The results of one alternative so far, batch by batch, and what two of them say about each other.
import type { Alternative } from './alternatives.ts';
import { type Estimate, estimate, meanOf } from './estimate.ts';
import { column, type Means } from './sampled-deals.ts';

/** An interval that is shown holds in 95 of 100 choices. */
export const SHOWN_TAIL = 0.025;

export interface Series {
  readonly alternative: Alternative;
  /** From the deals of the screening. */
  readonly controls: Float64Array;
  /** Own win probability at the close, and right after the step; the receiver's at the close. */
  own: Float64Array;
  after: Float64Array;
  receiver: Float64Array;
  running: boolean;
}

const NONE = new Float64Array(0);

export function createSeries(alternative: Alternative, controls: Float64Array = NONE): Series {
  return { alternative, controls, own: NONE, after: NONE, receiver: NONE, running: true };
}

/** Adds the results of the action number `action`. */
export function addResults(
  series: Series,
  results: Means,
  action: number,
  { seat, receiver }: { readonly seat: number; readonly receiver: number | null },
): void {
  series.own = joined(series.own, column(results, action, seat));
  series.after = joined(series.after, column(results, action, 4 + seat));
  if (receiver !== null) series.receiver = joined(series.receiver, column(results, action, receiver));
}

/** By how much one is better than the other on the deals that both have seen. */
export function differenceBetween(one: Series, other: Series, tail: number): Estimate {
  const known = one.controls.length > 0 ? less(one.controls, other.controls) : null;
  return estimate({ values: less(one.own, other.own), controls: less(one.after, other.after) }, known, tail);
}

/** The same right after the step, before anybody passes again. */
export function immediateDifference(one: Series, other: Series): Estimate {
  return uncontrolled(less(one.after, other.after));
}

/** What the receiver's win probability gains over what an average pass gives it. */
export function giveawayOf(one: Series, averagePass: Series): Estimate {
  return uncontrolled(less(one.receiver, averagePass.receiver));
}

/** Own win probability at the close. */
export function ownWinProbability({ own }: Series): Estimate {
  const { halfWidth } = uncontrolled(own);
  return { value: meanOf(own), halfWidth };
}

function uncontrolled(values: Float64Array): Estimate {
  return estimate({ values, controls: values }, null, SHOWN_TAIL);
}

function less(a: Float64Array, b: Float64Array): Float64Array {
  return Float64Array.from({ length: Math.min(a.length, b.length) }, (_, n) => a[n]! - b[n]!);
}

function joined(a: Float64Array, b: Float64Array): Float64Array {
  const both = new Float64Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
