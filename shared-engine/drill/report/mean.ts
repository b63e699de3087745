// The mean of a figure over a class, with its 95 % interval.
import { type MeasuredValue, thousandth } from '../../analysis/index.ts';

/** From fewer values an interval says more about the few than about the class. */
const MIN_SAMPLE = 8;

/** Two-sided 95 % points of Student's t for 7 to 30 degrees of freedom. Source: printed tables of the t distribution. */
const T95: readonly number[] = [
  2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11, 2.101, 2.093, 2.086, 2.08, 2.074,
  2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
];

export interface ClassMean {
  readonly n: number;
  readonly mean: number;
  /** Ends of the 95 % interval of the mean, taking the players as a sample; null for fewer than eight. */
  readonly low: number | null;
  readonly high: number | null;
}

/** Null for no values. To the thousandth, as losses are. */
export function classMean(values: readonly number[]): ClassMean | null {
  const n = values.length;
  if (n === 0) return null;
  const mean = sumOf(values) / n;
  if (n < MIN_SAMPLE) return { n, mean: thousandth(mean), low: null, high: null };
  const squares = sumOf(values.map((value) => (value - mean) * (value - mean)));
  // Beyond the table its last entry is used, which is a little too wide.
  const half = T95[Math.min(n - MIN_SAMPLE, T95.length - 1)]! * Math.sqrt(squares / (n - 1) / n);
  return { n, mean: thousandth(mean), low: thousandth(mean - half), high: thousandth(mean + half) };
}

/**
 * The mean of losses that were measured one by one. Players who made the same choice share one measurement, so their
 * errors do not cancel out, and the interval is the mean of theirs. Null for none.
 */
export function meanOfMeasured(losses: readonly MeasuredValue[]): MeasuredValue | null {
  if (losses.length === 0) return null;
  const mean = (values: readonly number[]): number => thousandth(sumOf(values) / values.length);
  return {
    value: mean(losses.map(({ value }) => value)),
    halfWidth: mean(losses.map(({ halfWidth }) => halfWidth)),
  };
}

/** Adds in order of size, so that the order of the players cannot change the last bit. */
export function sumOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b).reduce((sum, value) => sum + value, 0);
}
