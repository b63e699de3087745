// How closely proofs look at a choice where many choices matter more than exact numbers.
import type { Budget } from '../../../shared-engine/analysis/comparison/budget.ts';

/** As little as possible: for claims that hold whatever the numbers are. */
export const GLANCE: Budget = {
  candidates: 12,
  rounds: [{ batches: 1, survivors: 4 }],
  interimAnalyses: [4],
};
