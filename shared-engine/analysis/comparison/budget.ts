// How closely a choice is analyzed: batches of sampled deals, and how many alternatives are left at each stage.

export interface Budget {
  /** Batches in which every legal alternative is valued right after the step; none is left out before it has a value. */
  readonly firstBatches: number;
  /** Alternatives that the search begins with, at most; by their first value, best first. */
  readonly candidates: number;
  /** Of those, how many survive each round of the search at most, and the batches of that round. */
  readonly rounds: readonly { readonly batches: number; readonly survivors: number }[];
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
    { batches: 4, survivors: 16 },
    { batches: 12, survivors: 9 },
    { batches: 24, survivors: 5 },
  ],
  fresh: { least: 24, most: 240 },
  why: { ends: 16, pick: 12, confirm: 32 },
};

/** For tests, proofs with many choices, and a loaded server. */
export const SHALLOW_BUDGET: Budget = {
  firstBatches: 1,
  candidates: 20,
  rounds: [
    { batches: 2, survivors: 10 },
    { batches: 8, survivors: 4 },
  ],
  fresh: { least: 16, most: 48 },
  why: { ends: 4, pick: 4, confirm: 8 },
};
