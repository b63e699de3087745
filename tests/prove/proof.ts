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

export interface Proof {
  /** One sentence for `prove -- list`. */
  readonly summary: string;
  run(input: { readonly seed: string; readonly size: Size }): Promise<readonly ProofRow[]>;
}
