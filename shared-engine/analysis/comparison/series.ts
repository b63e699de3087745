// The results of one alternative in the fresh sample, batch by batch, and what two of them say about each other.
import type { Alternative } from './alternatives.ts';
import { type Estimate, estimate } from './estimate.ts';
import { column, type Exchanged, type Results } from './sampled-deals.ts';
import type { Searched } from './screen.ts';

/** An interval that is shown holds in 95 of 100 choices. */
export const SHOWN_TAIL = 0.025;

export interface Series {
  readonly alternative: Alternative;
  /** What the search saw of it; empty for what it did not try. */
  readonly searched: Float64Array;
  /** Own win probability at the close. */
  own: Float64Array;
  /** What it costs through the receiver, as far as that was asked for. */
  throughReceiver: Float64Array;
  /** The look after which it stopped; null while it runs. */
  lastLook: number | null;
}

const NONE = new Float64Array(0);

export function createSeries({ alternative, own: searched }: Searched): Series {
  return { alternative, searched, own: NONE, throughReceiver: NONE, lastLook: null };
}

/** Adds the results of the action number `action`. */
export function addResults(series: Series, results: Results, action: number, seat: Exchanged['seat']): void {
  series.own = joined(series.own, column(results, action, seat));
}

/** Adds what it costs through the receiver, by batch. */
export function addCosts(series: Series, costs: Float64Array): void {
  series.throughReceiver = joined(series.throughReceiver, costs);
}

/** By how much one is better than the other on the fresh deals that both have seen. */
export function differenceBetween(one: Series, other: Series, tail: number): Estimate {
  return estimate(less(one.own, other.own), tail);
}

/** The same in the search, by batch. */
export function searchedDifference(one: Series, other: Series): Float64Array {
  return less(one.searched, other.searched);
}

/** What it costs through the receiver. */
export function costOf({ throughReceiver }: Series): Estimate {
  return estimate(throughReceiver, SHOWN_TAIL);
}

/** Own win probability at the close. */
export function ownWinProbability({ own }: Series): Estimate {
  return estimate(own, SHOWN_TAIL);
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
