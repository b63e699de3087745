// The machine's own clock behind the Clock port.
import type { Clock } from './ports.ts';

/** A timer of Node cannot wait longer than this many milliseconds. */
const LONGEST = 2 ** 31 - 1;

export const systemClock: Clock = {
  now: () => Date.now(),
  after(ms, run) {
    const timer = setTimeout(run, Math.min(Math.max(ms, 0), LONGEST));
    timer.unref();
    return () => clearTimeout(timer);
  },
};
