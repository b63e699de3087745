// What can be said of a piece of work when it is ordered, and what whoever ordered it holds.
import type { Task, TaskKind, TaskResult } from './task.ts';
import type { LeftOutReason } from './work-counts.ts';
import type { Priority } from './work-queue.ts';

/** How much work of one kind may wait; more is left out. */
export interface WaitingBound {
  /** For one fairness key. */
  readonly perKey: number;
  readonly inAll: number;
}

/** What may be said of a piece of work, and what it may use; memory is bounded by its worker. */
export interface WorkOptions {
  readonly kind: TaskKind;
  readonly priority: Priority;
  /** The room or class that asks. */
  readonly fairnessKey: string;
  readonly affinityKey: string | null;
  /** Time it may wait before it is left out, in milliseconds. */
  readonly maxWaitMs: number;
  /** Time for one try before its worker is ended, in milliseconds. */
  readonly timeoutMs: number;
  /** Missing where the bound of the whole queue is enough. */
  readonly bound?: WaitingBound | undefined;
  /** Aborted: it is not begun, or broken off, and answered with null. */
  readonly signal?: AbortSignal | undefined;
}

export interface PendingWork {
  /** Null when it was aborted, left out, or failed as often as it may. Never rejects. */
  readonly result: Promise<TaskResult | null>;
  /** Why the result is null; null where it was aborted. */
  whyNot(): LeftOutReason | null;
  /** Where it stands from now on; what is `interactive` once stays that. */
  rank(priority: Priority): void;
}

/** How a task stands when a worker takes it. */
export interface TaskMoment {
  /** 1 for the first try. */
  readonly attempt: number;
  /** Work that waits behind it. */
  readonly waiting: number;
}

/** Called when a worker is free, so that the task can fit what is then going on. */
export type MakeTask = (moment: TaskMoment) => Task;
