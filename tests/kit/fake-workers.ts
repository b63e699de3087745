// Workers for tests: each task waits until the test says how it ends.
import type { Task, TaskResult } from '../../server/workers/task.ts';
import { TaskFailed, type TaskWorker } from '../../server/workers/worker.ts';

/** A task that a worker has taken and not done yet. */
export interface TakenTask {
  readonly task: Task;
  /** Which worker has it: 0 for the first that was made. */
  readonly worker: number;
  /** Whether the worker was asked to break it off. */
  readonly isStopped: () => boolean;
  done(result: TaskResult): void;
  /** The task fails, and the worker goes on. */
  fail(): void;
  /** The worker dies with the task. */
  die(): void;
}

export interface FakeWorkers {
  readonly newWorker: () => TaskWorker;
  /** Oldest first; a task that is over leaves. */
  readonly taken: readonly TakenTask[];
  /** Workers made, and those of them that were ended. */
  readonly made: () => number;
  readonly ended: () => number;
}

export function fakeWorkers(): FakeWorkers {
  const taken: TakenTask[] = [];
  let made = 0;
  let ended = 0;
  const newWorker = (): TaskWorker => {
    const worker = made++;
    let isStopped = false;
    return {
      run(task) {
        isStopped = false;
        return new Promise((resolve, reject) => {
          const leave = () => void taken.splice(taken.indexOf(item), 1);
          const item: TakenTask = {
            task,
            worker,
            isStopped: () => isStopped,
            done(result) {
              leave();
              resolve(result);
            },
            fail() {
              leave();
              reject(new TaskFailed({ error: 'RangeError' }));
            },
            die() {
              leave();
              reject(new Error('the worker died'));
            },
          };
          taken.push(item);
        });
      },
      stop() {
        isStopped = true;
      },
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
