// Wilson's interval for a share.

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Two-sided points of the normal distribution by coverage; printed tables. */
export const NORMAL_POINT = {
  '95': 1.959963984540054,
  '99': 2.5758293035489004,
  '99.8': 3.090232306167813,
} as const;

/** The interval of the true share after `hits` of `trials`, for a two-sided point z (Wilson 1927). */
export function wilson(hits: number, trials: number, z: number): Interval {
  const share = hits / trials;
  const squared = (z * z) / trials;
  const centre = share + squared / 2;
  const half = z * Math.sqrt((share * (1 - share)) / trials + squared / trials / 4);
  return { low: (centre - half) / (1 + squared), high: (centre + half) / (1 + squared) };
}
