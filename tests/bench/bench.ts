// The shape of a benchmark: figures measured on this machine, never a bar inside a test.

export type Figures = { readonly [name: string]: number | string | null };

export interface Bench {
  /** One sentence for `bench -- list`. */
  readonly summary: string;
  run(input: { readonly seed: string }): Promise<Figures>;
}
