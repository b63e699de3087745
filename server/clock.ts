// The machine's own clock behind the Clock port; setting the machine's time moves nobody's deadline.
import type { Clock } from './ports.ts';

/** A timer of Node cannot wait longer than this many milliseconds. */
const MAX_TIMER_MS = 2 ** 31 - 1;

export const systemClock: Clock = {
  // Counted from the start of the process, whatever is done to the time of day.
  now: () => Math.round(performance.timeOrigin + performance.now()),
  after(ms, run) {
    const timer = setTimeout(run, Math.min(Math.max(ms, 0), MAX_TIMER_MS));
    timer.unref();
    return () => clearTimeout(timer);
  },
};
