// How large a fresh sample a choice is worth, from what the search saw of it.
import type { Budget } from './budget.ts';
import { meanOf } from './estimate.ts';
import { SMALL_LOSS } from './verdict.ts';

/** Half the width of a told difference that is narrow enough, in wins in 100 games. */
const NARROW = 0.5;
const POINT = 1.96;
/** With so many standard errors between a difference and the border, the verdict falls as it should 19 times in 20. */
const PLAIN = POINT + 1.65;

/**
 * Batches, from the differences between the alternative spoken of and the choice by batch of the search: until the told
 * difference is narrow enough, or as many as its verdict needs where it lies plainly to one side of the border. A
 * difference above it was picked as the largest of several: it counts for one standard error less.
 */
export function sampleSize(differences: Float64Array, { least, most }: Budget['fresh']): number {
  const n = differences.length;
  if (n < 2) return most;
  const mean = meanOf(differences);
  const spread = Math.sqrt(
    differences.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / (n - 1),
  );
  const overstated = mean > SMALL_LOSS ? spread / Math.sqrt(n) : 0;
  const gap = Math.max(0, Math.abs(mean - SMALL_LOSS) - overstated);
  const forWidth = (POINT * spread) / NARROW;
  const forVerdict = gap === 0 ? Number.POSITIVE_INFINITY : (PLAIN * spread) / gap;
  const needed = Math.min(forWidth, forVerdict);
  return Math.max(least, Math.min(most, Math.ceil(needed * needed)));
}
