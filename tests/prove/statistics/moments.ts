// Mean and standard deviation of a sample, in two passes so that large offsets cost no digits.

export interface Sample {
  readonly n: number;
  readonly mean: number;
  /** With n − 1 below. */
  readonly deviation: number;
}

/** At least two values. The rounding left over in the mean is taken out again (Chan, Golub & LeVeque 1983). */
export function sampleOf(values: readonly number[]): Sample {
  const n = values.length;
  const first = values.reduce((sum, value) => sum + value, 0) / n;
  const rest = values.reduce((sum, value) => sum + (value - first), 0);
  const squares = values.reduce((sum, value) => sum + (value - first) ** 2, 0);
  return { n, mean: first + rest / n, deviation: Math.sqrt((squares - (rest * rest) / n) / (n - 1)) };
}
