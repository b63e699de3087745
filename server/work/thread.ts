// A hand with a thread of its own, run from the built files or, in development and tests, from source.
import { Worker } from 'node:worker_threads';
import { type Hand, TaskFailed } from './hand.ts';
import type { Answer, Task } from './task.ts';

/** What comes back from the thread; `failed` holds the facts of the error, never its message. */
export type Reply =
  | { readonly kind: 'done'; readonly answer: Answer }
  | { readonly kind: 'failed'; readonly facts: Readonly<Record<string, string>> };

/** What a thread is told when it starts. */
export interface ThreadSettings {
  /** Whether everything else on the machine goes first. */
  readonly behind: boolean;
}

/** The thread starts at once and makes the house card ready while nothing is asked. */
export function handInThread(settings: ThreadSettings, entry: URL = ownEntry()): Hand {
  const worker = new Worker(entry, { execArgv: [], workerData: settings });
  // A server that ends need not wait for a review.
  worker.unref();
  let settle: { resolve(answer: Answer): void; reject(error: Error): void } | null = null;
  let lost: Error | null = null;
  const lose = (error: Error) => {
    lost ??= error;
    settle?.reject(lost);
    settle = null;
  };
  worker.on('message', (reply: Reply) => {
    if (reply.kind === 'done') settle?.resolve(reply.answer);
    else settle?.reject(new TaskFailed(reply.facts));
    settle = null;
  });
  worker.on('error', lose);
  worker.on('exit', () => lose(new Error('The thread has ended.')));
  return {
    run: (task: Task) =>
      new Promise((resolve, reject) => {
        if (lost) return reject(lost);
        settle = { resolve, reject };
        worker.postMessage(task);
      }),
    async end() {
      await worker.terminate();
    },
  };
}

/** Beside this file, in the language this file is in. */
function ownEntry(): URL {
  if (!import.meta.url.endsWith('.ts')) return new URL('./worker.js', import.meta.url);
  // Node runs no TypeScript by itself, and a thread takes no loader over; the loader is there wherever source is.
  const loader = import.meta.resolve('tsx/esm/api');
  const source = new URL('./worker.ts', import.meta.url).href;
  const start = `import { register } from '${loader}'; register(); await import('${source}');`;
  return new URL(`data:text/javascript,${encodeURIComponent(start)}`);
}
