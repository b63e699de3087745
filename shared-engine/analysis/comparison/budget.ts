// How long a choice is looked at: batches of worlds, and how many alternatives stay in the race.

export interface Budget {
  /** Alternatives that are tried at all, best kept rack first. */
  readonly field: number;
  /** Of those, how many stay at most after each round of the first stage, and the batches of that round. */
  readonly rounds: readonly { readonly batches: number; readonly stay: number }[];
  /** Batches of fresh worlds at each look of the second stage, counted from its start. */
  readonly looks: readonly number[];
}

/** At most 6,144 fresh worlds; half of all choices are decided on the first 512. */
export const DEEP: Budget = {
  field: 60,
  rounds: [
    { batches: 3, stay: 60 },
    { batches: 7, stay: 36 },
  ],
  looks: [32, 64, 128, 256, 512, 768],
};

/** For tests, proofs with many choices, and a loaded server. */
export const SHALLOW: Budget = {
  field: 32,
  rounds: [
    { batches: 2, stay: 12 },
    { batches: 6, stay: 6 },
  ],
  looks: [16, 32],
};
