// Counts the work that was left out, for the metrics and, now and then, the log.
import type { Log } from '../log.ts';
import type { Cancel, Clock } from '../ports.ts';
import type { TaskKind } from './task.ts';

/** Why nobody got an answer: no room in the queue, waited too long, or failed at every try. */
export const LEFT_OUT_REASONS = ['queue-full', 'too-old', 'failed'] as const;
export type LeftOutReason = (typeof LEFT_OUT_REASONS)[number];

/** A loaded server says what it left out once in so many milliseconds, not each time. */
export const REPORT_MS = 60_000;

export interface WorkCount {
  readonly task: TaskKind;
  readonly reason: LeftOutReason;
  readonly count: number;
}

export class WorkCounts {
  readonly #clock: Clock;
  readonly #log: Log;
  readonly #leftOut = new Map<string, WorkCount>();
  /** Left out since the log last said so. */
  #unreported = 0;
  #cancelReport: Cancel | null = null;

  constructor(clock: Clock, log: Log) {
    this.#clock = clock;
    this.#log = log;
  }

  leftOut(task: TaskKind, reason: LeftOutReason): void {
    const key = `${task} ${reason}`;
    this.#leftOut.set(key, { task, reason, count: (this.#leftOut.get(key)?.count ?? 0) + 1 });
    this.#unreported++;
    this.#cancelReport ??= this.#clock.after(REPORT_MS, () => this.#report());
  }

  /** Since the start of the server. */
  get all(): readonly WorkCount[] {
    return [...this.#leftOut.values()];
  }

  close(): void {
    this.#cancelReport?.();
  }

  #report(): void {
    this.#cancelReport = null;
    this.#log.warn({ leftOut: this.#unreported, inAll: this.all }, 'work was left out');
    this.#unreported = 0;
  }
}
