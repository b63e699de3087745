// What each kind of slow work may use and how long it may wait: the one table behind every order to the workers.
import type { SeatRecord } from '../../shared-engine/index.ts';
import type { TaskKind } from './task.ts';
import type { WaitingBound, WorkOptions } from './work-options.ts';
import type { Priority } from './work-queue.ts';

interface WorkBudget {
  readonly priority: Priority;
  readonly maxWaitMs: number;
  readonly timeoutMs: number;
  readonly bound?: WaitingBound;
}

/** What strangers send to be prepared: so much of one kind may wait for one sender, and in all, each up to half a megabyte. */
const SENT: WaitingBound = { perKey: 4, inAll: 32 };

/** Rounds that devices send to be counted: sixty behind one address send at once, and whoever comes on top sends again. */
const PLAYED: WaitingBound = { perKey: 64, inAll: 512 };

/** What is prepared while people think, for one room or class and in all; whatever comes on top is analyzed when it is asked for. */
const PREPARED: WaitingBound = { perKey: 4, inAll: 64 };

/**
 * A first review or a bot's choice takes a twentieth of a second, and a thread that has to start a second more; an
 * analysis takes up to three seconds of a core, which may be shared by many; a part of a drill up to half a second, and
 * the largest card a half, and ten times as long for an analysis on it.
 */
const BUDGETS: Readonly<Record<TaskKind, WorkBudget>> = {
  review: { priority: 'live', maxWaitMs: 10 * 60_000, timeoutMs: 10_000 },
  // A table waits for its bots no longer than five seconds.
  choose: { priority: 'live', maxWaitMs: 4_000, timeoutMs: 10_000 },
  analyze: { priority: 'live', maxWaitMs: 10 * 60_000, timeoutMs: 120_000 },
  // A step that is still open after a minute without an idle worker has waited for other tables.
  prepare: { priority: 'idle', maxWaitMs: 60_000, timeoutMs: 120_000, bound: PREPARED },
  // It says how the round went as a whole: the choices are told first.
  ledger: { priority: 'background', maxWaitMs: 10 * 60_000, timeoutMs: 120_000 },
  // Somebody waits for it.
  'check-card': { priority: 'interactive', maxWaitMs: 60_000, timeoutMs: 20_000, bound: SENT },
  'compile-card': { priority: 'interactive', maxWaitMs: 60_000, timeoutMs: 20_000 },
  // A teacher waits for it. What is left of a hard one after its first part waits for everybody else.
  drill: { priority: 'interactive', maxWaitMs: 60_000, timeoutMs: 30_000, bound: SENT },
  // A page waits for its answer, and sends again where none comes; tables in play go first.
  play: { priority: 'background', maxWaitMs: 20_000, timeoutMs: 20_000, bound: PLAYED },
  'drill-part': { priority: 'background', maxWaitMs: 60_000, timeoutMs: 30_000, bound: SENT },
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
