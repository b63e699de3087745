// Virtual time that jumps from event to event, and the clocks of simulated machines on top of it.
import type { Clock, Unsubscribe } from '../../server/ports.ts';

interface Timer {
  readonly at: number;
  readonly order: number;
  readonly run: () => void;
  off: boolean;
}

export class VirtualTime {
  now = Date.UTC(2026, 0, 1);
  readonly #timers: Timer[] = [];
  #orders = 0;

  after(ms: number, run: () => void): Unsubscribe {
    const timer: Timer = {
      at: this.now + Math.max(0, Math.ceil(ms)),
      order: this.#orders++,
      run,
      off: false,
    };
    this.#push(timer);
    return () => {
      timer.off = true;
    };
  }

  /** Runs all timers up to `until`, finishing each one's promises before the next; stops early once `done` holds. */
  async run(until: number, done: () => boolean): Promise<void> {
    for (;;) {
      const timer = this.#timers[0];
      if (timer === undefined || timer.at > until) break;
      this.#pop();
      if (timer.off) continue;
      this.now = timer.at;
      timer.run();
      await nextTurn();
      if (done()) return;
    }
    this.now = until;
  }

  #push(timer: Timer): void {
    const heap = this.#timers;
    let at = heap.push(timer) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!isBefore(heap[at]!, heap[parent]!)) return;
      [heap[at], heap[parent]] = [heap[parent]!, heap[at]!];
      at = parent;
    }
  }

  #pop(): void {
    const heap = this.#timers;
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return;
    heap[0] = last;
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      let least = at;
      if (left < heap.length && isBefore(heap[left]!, heap[least]!)) least = left;
      if (right < heap.length && isBefore(heap[right]!, heap[least]!)) least = right;
      if (least === at) return;
      [heap[at], heap[least]] = [heap[least]!, heap[at]!];
      at = least;
    }
  }
}

function isBefore(one: Timer, other: Timer): boolean {
  return one.at < other.at || (one.at === other.at && one.order < other.order);
}

/** Microtasks all run before the next turn of the event loop. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** The clock of one machine: off by `skew` milliseconds, late while frozen, silent once stopped. */
export class MachineClock implements Clock {
  readonly #time: VirtualTime;
  readonly #skew: number;
  #frozenUntil = 0;
  #dead = false;

  constructor(time: VirtualTime, skew: number) {
    this.#time = time;
    this.#skew = skew;
  }

  now(): number {
    return this.#time.now + this.#skew;
  }

  after(ms: number, run: () => void): Unsubscribe {
    let undo: Unsubscribe = () => {};
    const fire = () => {
      if (this.#dead) return;
      const left = this.#frozenUntil - this.#time.now;
      if (left > 0) undo = this.#time.after(left, fire);
      else run();
    };
    undo = this.#time.after(ms, fire);
    return () => undo();
  }

  freeze(ms: number): void {
    this.#frozenUntil = this.#time.now + ms;
  }

  stop(): void {
    this.#dead = true;
  }
}
