// What each kind of slow work may use and how long it may wait: the one table behind every order to the workers.
import type { SeatRecord } from '../../shared-engine/index.ts';
import type { TaskKind } from './task.ts';
import type { Priority } from './work-queue.ts';
import type { WorkOptions } from './worker-pool.ts';

interface WorkBudget {
  readonly priority: Priority;
  readonly maxWaitMs: number;
  readonly timeoutMs: number;
}

/**
 * A first review or a bot's choice takes a twentieth of a second, and a thread that has to start a second more; an
 * analysis takes up to three seconds of a core, which may be shared by many; a drill up to half a minute.
 */
const BUDGETS: Readonly<Record<TaskKind, WorkBudget>> = {
  review: { priority: 'live', maxWaitMs: 10 * 60_000, timeoutMs: 10_000 },
  // A table waits for its bots no longer than five seconds.
  choose: { priority: 'live', maxWaitMs: 4_000, timeoutMs: 10_000 },
  analyze: { priority: 'live', maxWaitMs: 10 * 60_000, timeoutMs: 120_000 },
  // Somebody waits for it; the largest card takes a third of a second.
  'check-card': { priority: 'interactive', maxWaitMs: 60_000, timeoutMs: 20_000 },
  'compile-card': { priority: 'interactive', maxWaitMs: 60_000, timeoutMs: 20_000 },
  // A teacher waits for it.
  drill: { priority: 'interactive', maxWaitMs: 60_000, timeoutMs: 120_000 },
};

export function workOptions(
  kind: TaskKind,
  fairnessKey: string,
  affinityKey: string | null,
  signal?: AbortSignal,
): WorkOptions {
  return { kind, ...BUDGETS[kind], fairnessKey, affinityKey, signal };
}

/** The same for every task about one seat's round, so that one worker does them all if it can. */
export function affinityKeyOf({ seat, start }: SeatRecord): string {
  return `${seat} ${start.join(' ')}`;
}
