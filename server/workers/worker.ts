// A worker does one task at a time: in a thread of its own, or, for tests and small servers, in the server's thread.
import { setImmediate } from 'node:timers/promises';
import type { Task, TaskResult } from './task.ts';
import type { TaskRunner } from './task-runner.ts';

export interface TaskWorker {
  /** Rejects when the task fails or is stopped, or when the worker is lost. */
  run(task: Task): Promise<TaskResult>;
  /** Asks the worker to break the current task off; how soon depends on the task. */
  stop(): void;
  /** Ends the worker, whatever it is doing. */
  end(): Promise<void>;
}

/** A task that failed inside its thread; the facts are safe to log. */
export class TaskFailed extends Error {
  override readonly name = 'TaskFailed';
  readonly facts: Readonly<Record<string, string>>;

  constructor(facts: Readonly<Record<string, string>>) {
    super('A task failed in its thread.');
    this.facts = facts;
  }
}

/** Rooms and sockets get their turn between two tasks, never during one, so a running task cannot be stopped. */
export function workerInProcess(runner: Promise<TaskRunner>): TaskWorker {
  return {
    async run(task) {
      await setImmediate();
      return (await runner).run(task);
    },
    stop() {},
    async end() {},
  };
}
