// How closely proofs look at a choice where many choices matter more than exact numbers.
import type { Budget } from '../../../shared-engine/analysis/comparison/budget.ts';

/** As little as possible: for claims that hold whatever the numbers are. */
export const GLANCE: Budget = {
  firstBatches: 1,
  candidates: 8,
  rounds: [{ batches: 2, survivors: 4 }],
  fresh: { least: 4, most: 4 },
  why: { ends: 1, pick: 1, confirm: 2 },
};
