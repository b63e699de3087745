// A pair of hands for one task at a time: a thread of its own, or the server's own thread as its twin.
import { setImmediate } from 'node:timers/promises';
import type { Desk } from './desk.ts';
import type { Answer, Task } from './task.ts';

export interface Hand {
  /** Rejects when the task fails or the hand is lost. One task at a time. */
  run(task: Task): Promise<Answer>;
  /** Gives the hand up, whatever it is doing. */
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

/** The twin: other work gets its turn between two tasks, never during one. */
export function handInProcess(desk: Promise<Desk>): Hand {
  return {
    async run(task) {
      await setImmediate();
      return (await desk).do(task);
    },
    async end() {},
  };
}
