// How closely a choice is analyzed: batches of sampled deals, and how many alternatives are left at each stage.

export interface Budget {
  /** Alternatives that are tried at all, best tiles left first. */
  readonly candidates: number;
  /** Of those, how many survive each round of screening at most, and the batches of that round. */
  readonly rounds: readonly { readonly batches: number; readonly survivors: number }[];
  /** Batches of fresh deals at each interim analysis of the comparison, counted from its start. */
  readonly interimAnalyses: readonly number[];
}

/** At most 6,144 fresh deals; half of all choices are decided on the first 512. */
export const DEEP_BUDGET: Budget = {
  candidates: 60,
  rounds: [
    { batches: 3, survivors: 60 },
    { batches: 7, survivors: 36 },
  ],
  interimAnalyses: [32, 64, 128, 256, 512, 768],
};

/** For tests, proofs with many choices, and a loaded server. */
export const SHALLOW_BUDGET: Budget = {
  candidates: 32,
  rounds: [
    { batches: 2, survivors: 12 },
    { batches: 6, survivors: 6 },
  ],
  interimAnalyses: [16, 32],
};
