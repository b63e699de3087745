// A clock that stands still until a test moves it.
import type { Clock } from '../../server/ports.ts';

interface Timer {
  readonly at: number;
  readonly run: () => void;
}

export class FakeClock implements Clock {
  #now = Date.UTC(2026, 0, 1);
  #timers: Timer[] = [];

  now(): number {
    return this.#now;
  }

  after(ms: number, run: () => void): () => void {
    const timer: Timer = { at: this.#now + Math.max(0, ms), run };
    this.#timers.push(timer);
    return () => {
      this.#timers = this.#timers.filter((other) => other !== timer);
    };
  }

  /** Moves on and runs what falls due, earliest first. What that sets going elsewhere is not waited for. */
  advance(ms: number): void {
    const end = this.#now + ms;
    for (;;) {
      const due = this.#timers.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at)[0];
      if (due === undefined) break;
      this.#timers = this.#timers.filter((timer) => timer !== due);
      this.#now = Math.max(this.#now, due.at);
      due.run();
    }
    this.#now = end;
  }
}
