// The time of one item, as the best of many short windows: other work on the machine only adds to it.

/** Windows measured, and how long each is at least, in ms. */
const WINDOWS = 60;
const LENGTH = 8;

/** Nanoseconds an item: the best of many short windows, after one to warm up. `run` works through `items` items. */
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
