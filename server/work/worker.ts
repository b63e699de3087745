// The other side of a hand in a thread: takes tasks one after the other and answers each.
import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { loadVectors } from '../../shared-engine/index.ts';
import { errorFacts } from '../log.ts';
import { createDesk } from './desk.ts';
import { HOUSE_SLIP, type Task } from './task.ts';
import type { Reply, ThreadSettings } from './thread.ts';

const port = parentPort;
if (port === null) throw new Error('This file runs in a thread of the server; start server/main instead.');

/** A third of what a thread that serves tables gets, where both want a core; further back, a busy machine would starve it. */
const NICE = 5;

const { behind }: ThreadSettings = workerData;
// Linux has a priority for each thread; elsewhere this would hold back the whole server.
if (behind && process.platform === 'linux') stepBack();

const desk = createDesk(await loadVectors());
desk.prepare(HOUSE_SLIP);

port.on('message', (task: Task) => port.postMessage(replyTo(task)));

function replyTo(task: Task): Reply {
  try {
    return { kind: 'done', answer: desk.do(task) };
  } catch (error) {
    return { kind: 'failed', facts: errorFacts(error) };
  }
}

function stepBack(): void {
  try {
    setPriority(NICE);
  } catch {
    // A system that forbids it has its own idea of who goes first.
  }
}
