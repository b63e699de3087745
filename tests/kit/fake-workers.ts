// Hands for tests: each task waits until the test says how it ends.

import type { Task, TaskResult } from '../../server/workers/task.ts';
import type { TaskWorker } from '../../server/workers/worker.ts';

/** A task that a hand has taken up and not done yet. */
export interface AssignedTask {
  readonly task: Task;
  done(answer: TaskResult): void;
  die(): void;
}

export interface FakeWorkers {
  readonly newWorker: () => TaskWorker;
  /** Oldest first; a task that is done or has died leaves. */
  readonly taken: readonly AssignedTask[];
  /** Hands made, and those of them that were given up. */
  readonly made: () => number;
  readonly ended: () => number;
}

export function fakeWorkers(): FakeWorkers {
  const taken: AssignedTask[] = [];
  let made = 0;
  let ended = 0;
  const newWorker = (): TaskWorker => {
    made++;
    return {
      run: (task) =>
        new Promise((resolve, reject) => {
          const leave = () => void taken.splice(taken.indexOf(item), 1);
          const item: AssignedTask = {
            task,
            done(answer) {
              leave();
              resolve(answer);
            },
            die() {
              leave();
              reject(new Error('the hand died'));
            },
          };
          taken.push(item);
        }),
      async end() {
        ended++;
      },
    };
  };
  return { newWorker, taken, made: () => made, ended: () => ended };
}

/** Lets everything that is due without a clock happen. */
export async function nextTurn(): Promise<void> {
  for (let turn = 0; turn < 5; turn++) await new Promise((resolve) => setImmediate(resolve));
}
