// The confidence interval of a share that was counted in a sample.

/** The two-sided 95 % point of the normal distribution. */
const POINT = 1.959963984540054;

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Wilson's 95 % interval of the true share after `hits` of `trials`, at least one trial (Wilson 1927). */
export function wilson(hits: number, trials: number): Interval {
  const share = hits / trials;
  const squared = (POINT * POINT) / trials;
  const centre = share + squared / 2;
  const half = POINT * Math.sqrt((share * (1 - share)) / trials + squared / trials / 4);
  return {
    // At the ends the two terms differ at most in the last bit.
    low: hits === 0 ? 0 : (centre - half) / (1 + squared),
    high: hits === trials ? 1 : (centre + half) / (1 + squared),
  };
}
