// A mean over sampled deals and how far it may be off, from independent batches.
import { studentQuantile } from './quantiles.ts';

/** Of a win probability or a difference of two, in wins in 100 games. */
export interface Estimate {
  readonly value: number;
  /** Half the width of the interval around it. */
  readonly halfWidth: number;
}

/** Means of one quantity and of its control, batch by batch. */
export interface BatchMeans {
  readonly values: Float64Array;
  readonly controls: Float64Array;
}

/** The control's mean from other deals, by batch; null where none were sampled. */
export type ControlMeans = Float64Array | null;

/**
 * Mean of the values with a control variate: value − β(control − its mean over other deals). β is fitted to the
 * batches; the error counts both sets of deals and the fitted β. `tail` is the probability of each end of the
 * interval.
 */
export function estimate({ values, controls }: BatchMeans, known: ControlMeans, tail: number): Estimate {
  const n = values.length;
  const mean = meanOf(values);
  const variance = covariance(values, values);
  const controlVariance = covariance(controls, controls);
  if (known === null || controlVariance === 0 || n < 4) {
    return { value: mean, halfWidth: studentQuantile(tail, n - 1) * Math.sqrt(variance / n) };
  }
  const both = covariance(values, controls);
  const share = known.length / (n + known.length);
  const beta = (share * both) / controlVariance;
  const rest = Math.max(0, variance - (both * both) / controlVariance);
  // Var = rest/n + what the control explains, as far as the other deals leave it open.
  const explained = variance - rest;
  const error = Math.sqrt((rest * (1 + 1 / n)) / n + explained / (n + known.length));
  return {
    value: mean - beta * (meanOf(controls) - meanOf(known)),
    halfWidth: studentQuantile(tail, n - 2) * error,
  };
}

export function meanOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

function covariance(a: Float64Array, b: Float64Array): number {
  const meanA = meanOf(a);
  const meanB = meanOf(b);
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i]! - meanA) * (b[i]! - meanB);
  return sum / (a.length - 1);
}
