// A mean over sampled deals and how far it may be off, from independent batches.
import { studentQuantile } from './quantiles.ts';

/** Of a win probability or a difference of two, in wins in 100 games. */
export interface Estimate {
  readonly value: number;
  /** Half the width of the interval around it. */
  readonly halfWidth: number;
}

/**
 * Mean of values by batch, with Student's interval; `tail` is the probability of each of its ends. No other deals help:
 * those of the search would make the alternative that they have picked seem as good as they found it.
 */
export function estimate(values: Float64Array, tail: number): Estimate {
  const n = values.length;
  const mean = meanOf(values);
  let squares = 0;
  for (const value of values) squares += (value - mean) * (value - mean);
  return { value: mean, halfWidth: studentQuantile(tail, n - 1) * Math.sqrt(squares / (n - 1) / n) };
}

export function meanOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** The nearest thousandth, as numbers of a review are rounded. */
export function thousandth(value: number): number {
  return Math.round(value * 1000) / 1000;
}
