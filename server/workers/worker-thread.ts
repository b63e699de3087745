// A worker in a thread of its own, run from the built files or, in development and tests, from source.
import { Worker } from 'node:worker_threads';
import type { Task, TaskResult } from './task.ts';
import { TaskFailed, type TaskWorker } from './worker.ts';

/** What comes back from the thread; `failed` holds the facts of the error, never its message. */
export type Reply =
  | { readonly kind: 'done'; readonly result: TaskResult }
  | { readonly kind: 'failed'; readonly facts: Readonly<Record<string, string>> };

/** What a thread is told when it starts. */
export interface ThreadSettings {
  /** Whether the server's own thread goes first where both want a core. */
  readonly lowPriority: boolean;
  /** Holds 1 while the current task is to be broken off. */
  readonly stopFlag: Int32Array;
}

/**
 * Heap of one thread in megabytes: a task that needs more ends its thread and nothing else. Two of the largest cards,
 * their analyses and a drill of thirty deals take a third of it.
 */
const MAX_HEAP_MB = 256;

/** The thread starts at once and compiles the house card while nothing is asked. */
export function workerInThread(lowPriority: boolean, entry: URL = workerEntry()): TaskWorker {
  const stopFlag = new Int32Array(new SharedArrayBuffer(4));
  const workerData: ThreadSettings = { lowPriority, stopFlag };
  const resourceLimits = { maxOldGenerationSizeMb: MAX_HEAP_MB };
  const thread = new Worker(entry, { execArgv: [], workerData, resourceLimits });
  // A server that ends need not wait for a review.
  thread.unref();
  let settle: { resolve(result: TaskResult): void; reject(error: Error): void } | null = null;
  let lost: Error | null = null;
  const lose = (error: Error) => {
    lost ??= error;
    settle?.reject(lost);
    settle = null;
  };
  thread.on('message', (reply: Reply) => {
    if (reply.kind === 'done') settle?.resolve(reply.result);
    else settle?.reject(new TaskFailed(reply.facts));
    settle = null;
  });
  thread.on('error', lose);
  thread.on('exit', () => lose(new Error('The thread has ended.')));
  return {
    run: (task: Task) =>
      new Promise((resolve, reject) => {
        if (lost) return reject(lost);
        settle = { resolve, reject };
        Atomics.store(stopFlag, 0, 0);
        thread.postMessage(task);
      }),
    stop: () => void Atomics.store(stopFlag, 0, 1),
    async end() {
      await thread.terminate();
    },
  };
}

/** Beside this file, in the language this file is in. */
function workerEntry(): URL {
  if (!import.meta.url.endsWith('.ts')) return new URL('./worker-entry.js', import.meta.url);
  // Node runs no TypeScript by itself, and a thread takes no loader over; the loader is there wherever source is.
  const loader = import.meta.resolve('tsx/esm/api');
  const source = new URL('./worker-entry.ts', import.meta.url).href;
  const start = `import { register } from '${loader}'; register(); await import('${source}');`;
  return new URL(`data:text/javascript,${encodeURIComponent(start)}`);
}
