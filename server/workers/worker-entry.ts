// What runs in a worker's thread: takes tasks one after the other and answers each.
import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { loadSimd } from '../../shared-engine/index.ts';
import { errorFacts } from '../log.ts';
import { HOUSE_CARD_REF, type Task } from './task.ts';
import { createTaskRunner } from './task-runner.ts';
import type { Reply, ThreadSettings } from './worker-thread.ts';

const port = parentPort;
if (port === null) throw new Error('This file runs in a thread of the server; start server/main instead.');

/** Leaves a thread a third of what the server's own gets where both want a core; more would starve it on a busy machine. */
const NICE = 5;

const { lowPriority, stopFlag }: ThreadSettings = workerData;
// Linux has a priority for each thread; elsewhere this would slow down the whole server.
if (lowPriority && process.platform === 'linux') lowerThreadPriority();

const runner = createTaskRunner(await loadSimd(), () => Atomics.load(stopFlag, 0) === 1);
runner.prepare(HOUSE_CARD_REF);

port.on('message', (task: Task) => port.postMessage(replyTo(task)));

function replyTo(task: Task): Reply {
  try {
    return { kind: 'done', result: runner.run(task) };
  } catch (error) {
    return { kind: 'failed', facts: errorFacts(error) };
  }
}

function lowerThreadPriority(): void {
  try {
    setPriority(NICE);
  } catch {
    // A system that forbids it decides about priorities itself.
  }
}
