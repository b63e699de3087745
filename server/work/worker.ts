// The other side of a hand in a thread: takes tasks one after the other and answers each.
import { parentPort } from 'node:worker_threads';
import { loadVectors } from '../../shared-engine/index.ts';
import { errorFacts } from '../log.ts';
import { createDesk } from './desk.ts';
import { HOUSE_SLIP, type Task } from './task.ts';
import type { Reply } from './thread.ts';

const port = parentPort;
if (port === null) throw new Error('This file runs in a thread of the server; start server/main instead.');

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
