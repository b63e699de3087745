// The shape of a benchmark (figures of this machine, never a bar inside a test), and the time of one item.

export type Figures = { readonly [name: string]: number | string | null };

export interface BenchInput {
  readonly seed: string;
  /** A small one shows that a benchmark of many tables runs; its figures say little. The others have one size. */
  readonly size: 'small' | 'full';
}

export interface Bench {
  /** One sentence for `bench -- list`. */
  readonly summary: string;
  run(input: BenchInput): Promise<Figures>;
}

/** Windows measured, and how long each is at least, in ms. */
const WINDOWS = 60;
const LENGTH = 8;

/** Nanoseconds an item, the best of many short windows: other work only adds. `run` works through `items` items. */
export function nanoseconds(items: number, run: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let window = 0; window <= WINDOWS; window++) {
    const started = performance.now();
    let done = 0;
    while (performance.now() - started < LENGTH) {
      run();
      done += items;
    }
    if (window > 0) best = Math.min(best, ((performance.now() - started) * 1e6) / done);
  }
  return best;
}
