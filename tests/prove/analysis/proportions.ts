// Shares and mean differences as proof rows show them, with the interval that goes with each.
import { sampleOf, studentPoint } from '../statistics/student.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

/** "1912 of 2000 = 95.6 % (Wilson 95 %: 94.6–96.4)". */
export function shareText(hits: number, trials: number): string {
  const { low, high } = wilson(hits, trials, NORMAL_POINT['95']);
  return `${hits} of ${trials} = ${percent(hits / trials)} % (Wilson 95 %: ${percent(low)}–${percent(high)})`;
}

export function percent(share: number): string {
  return (share * 100).toFixed(1);
}

/** Mean of paired differences and the two ends of its 99 % interval. */
export function differenceOf(values: readonly number[]): {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
} {
  const { n, mean, deviation } = sampleOf(values);
  const halfWidth = (studentPoint(0.01, n - 1) * deviation) / Math.sqrt(n);
  return { mean, low: mean - halfWidth, high: mean + halfWidth };
}

export function differenceText(values: readonly number[]): string {
  const { mean, low, high } = differenceOf(values);
  return `${mean.toFixed(3)} (99 %: ${low.toFixed(3)} to ${high.toFixed(3)}, n ${values.length})`;
}
