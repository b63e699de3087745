// How closely proofs look at a choice where many choices matter more than exact numbers.
import { type Budget, DEEP_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import type { Size } from '../proof.ts';

/** As little as possible: for claims that hold whatever the numbers are. */
export const GLANCE: Budget = {
  firstBatches: 1,
  candidates: 8,
  rounds: [{ batches: 2, survivors: 4 }],
  fresh: { least: 4, most: 4 },
  why: { ends: 1, pick: 1, confirm: 2 },
};

/**
 * For players with a habit and without: as closely as the page judges, because how often a kind of mistake is found depends
 * on it. Rounds of each kind of player that are judged: five players of one deal take 10 s of a core together, what they
 * chose alike being judged once, so that 140 deals take 25 minutes.
 */
export const HABIT_JUDGING: Readonly<Record<Size, { readonly rounds: number; readonly budget: Budget }>> = {
  small: { rounds: 8, budget: GLANCE },
  full: { rounds: 140, budget: DEEP_BUDGET },
};
