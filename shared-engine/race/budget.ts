// How long a choice is looked at: batches of worlds, and how many alternatives stay in the race.

export interface Budget {
  /** Alternatives that are tried at all, best kept rack first. */
  readonly field: number;
  /** Of those, how many stay after each round of the first stage, and the batches of that round. */
  readonly rounds: readonly { readonly batches: number; readonly stay: number }[];
  /** Batches of fresh worlds at each look of the second stage, counted from its start. */
  readonly looks: readonly number[];
}

export const DEEP: Budget = {
  field: 48,
  rounds: [
    { batches: 2, stay: 16 },
    { batches: 8, stay: 8 },
  ],
  looks: [16, 32, 64, 128],
};

/** For tests, proofs at their small size and a loaded server. */
export const SHALLOW: Budget = {
  field: 24,
  rounds: [
    { batches: 1, stay: 10 },
    { batches: 3, stay: 6 },
  ],
  looks: [8, 16],
};
