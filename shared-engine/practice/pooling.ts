// Partial pooling: the mean of a small group is drawn towards that of all groups, the more so the less it rests on.

export interface GroupMean {
  readonly mean: number;
  /** Variance of that mean, above 0. */
  readonly variance: number;
}

export interface PooledMean {
  readonly value: number;
  /** Half the width of its 95 % interval. */
  readonly halfWidth: number;
}

export interface Pooled {
  /** Mean of all groups, and how far the groups truly differ: the variance between them. */
  readonly overall: number;
  readonly between: number;
  /** The factor by which each group keeps its distance from the mean of all; 0 draws it there. */
  readonly kept: readonly number[];
  readonly means: readonly PooledMean[];
}

/** Of a normal distribution. */
const INTERVAL = 1.96;

/**
 * Empirical Bayes: the variance between groups by the moment estimator of DerSimonian and Laird (1986), the shrinkage
 * with the correction for estimating it by Morris (1983), which for groups of one variance is the James–Stein
 * estimator; the intervals are Morris's.
 */
export function partialPooling(groups: readonly GroupMean[]): Pooled {
  const count = groups.length;
  const between = betweenGroups(groups);
  const overall = weightedMean(groups, between);
  // With three groups or fewer nothing is known of how they differ that the correction could rest on.
  const correction = count > 3 ? (count - 3) / (count - 1) : 1;
  const kept = groups.map(({ variance }) => 1 - correction * (variance / (variance + between)));
  const means = groups.map(({ mean, variance }, nth): PooledMean => {
    const drawn = 1 - kept[nth]!;
    const away = mean - overall;
    const own = variance * (1 - ((count - 1) / count) * drawn);
    const ofEstimate = count > 3 ? (2 / (count - 3)) * drawn * drawn * away * away : 0;
    return { value: overall + kept[nth]! * away, halfWidth: INTERVAL * Math.sqrt(own + ofEstimate) };
  });
  return { overall, between, kept, means };
}

function betweenGroups(groups: readonly GroupMean[]): number {
  const weights = groups.map(({ variance }) => 1 / variance);
  const sum = total(weights);
  const center = weightedMean(groups, 0);
  const spread = total(groups.map(({ mean }, nth) => weights[nth]! * (mean - center) ** 2));
  const scale = sum - total(weights.map((weight) => weight * weight)) / sum;
  return scale > 0 ? Math.max(0, (spread - (groups.length - 1)) / scale) : 0;
}

function weightedMean(groups: readonly GroupMean[], between: number): number {
  const weights = groups.map(({ variance }) => 1 / (variance + between));
  const sum = total(weights);
  return sum > 0 ? total(groups.map(({ mean }, nth) => weights[nth]! * mean)) / sum : 0;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
