// The shape of a proof: a claim that a command can check.

export type Size = 'small' | 'full';

export interface ProofRow {
  /** What was measured, in words. */
  readonly what: string;
  readonly value: number | string | boolean;
  /** The bar it is held to, in words or numbers. */
  readonly bar: string;
  readonly ok: boolean;
}

export interface ProofInput {
  readonly seed: string;
  readonly size: Size;
  readonly tell?: (row: ProofRow) => void;
  /** A file of somebody's own that is to be checked instead, for a proof that takes one. */
  readonly file?: string;
}

export interface Proof {
  /** One sentence for `prove -- list`. */
  readonly summary: string;
  /** `tell` gets rows as they come where a proof takes long, so that a run cut short says what it found. */
  run(input: ProofInput): Promise<readonly ProofRow[]>;
}
