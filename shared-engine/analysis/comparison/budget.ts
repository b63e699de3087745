// How closely a choice is analyzed: batches of sampled deals, and how many alternatives are left at each stage.
import type { RolloutEnd } from '../rollouts/batch.ts';

/** One round of the search. */
export interface SearchRound {
  readonly batches: number;
  /** Alternatives that survive it, at most. */
  readonly survivors: number;
  /**
   * Passes are told apart as well after the next pass as at the close, for a quarter of the work. What a number is worth
   * shows later: where only numbers differ, such rounds are left out. At the close where nothing is said.
   */
  readonly end?: Extract<RolloutEnd, 'next-pass'>;
}

export interface Budget {
  /** Batches in which every legal alternative is valued right after the step; none is left out before it has a value. */
  readonly firstBatches: number;
  /** Alternatives that the search begins with, at most; by their first value, best first. */
  readonly candidates: number;
  readonly rounds: readonly SearchRound[];
  /** Batches of the fresh sample that alone gives the verdict and the number: at least, and at most. */
  readonly fresh: { readonly least: number; readonly most: number };
  /**
   * Batches for the reasons where something better is told: to look at where the two passes end, to pick the one tile
   * that makes the difference, and to confirm that it does.
   */
  readonly why: { readonly ends: number; readonly pick: number; readonly confirm: number };
}

/** What a comparison alone needs. */
export type ComparisonBudget = Omit<Budget, 'why'>;

export const DEEP_BUDGET: Budget = {
  firstBatches: 3,
  candidates: 30,
  rounds: [
    { batches: 4, survivors: 16, end: 'next-pass' },
    { batches: 16, survivors: 8, end: 'next-pass' },
    { batches: 8, survivors: 5 },
    { batches: 16, survivors: 5 },
  ],
  fresh: { least: 24, most: 240 },
  why: { ends: 6, pick: 8, confirm: 24 },
};

/** For tests, proofs with many choices, and a loaded server. */
export const SHALLOW_BUDGET: Budget = {
  firstBatches: 1,
  candidates: 20,
  rounds: [
    { batches: 2, survivors: 10, end: 'next-pass' },
    { batches: 8, survivors: 4 },
  ],
  fresh: { least: 16, most: 48 },
  why: { ends: 4, pick: 4, confirm: 8 },
};
