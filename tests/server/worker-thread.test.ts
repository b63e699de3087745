// Workers with threads of their own: they answer as one in this process does, and die without taking a table along.
import { afterEach, beforeAll, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { HOUSE_CARD_REF, type Task } from '../../server/workers/task.ts';
import { createTaskRunner, type TaskRunner } from '../../server/workers/task-runner.ts';
import type { WorkOptions } from '../../server/workers/work-options.ts';
import { type TaskWorker, workerInProcess } from '../../server/workers/worker.ts';
import { WorkerPool } from '../../server/workers/worker-pool.ts';
import { workerInThread } from '../../server/workers/worker-thread.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { simd } from '../kit/analysts.ts';
import { FakeClock } from '../kit/clock.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { ALONE, anyAnswer, openRoom, ownView, sitDown } from '../kit/http-client.ts';
import { records } from '../kit/reviews.ts';
import { startProcess } from '../kit/server-process.ts';

const [record] = records('thread', 1);
const SHALLOW_TASK: Task = {
  kind: 'analyze',
  card: HOUSE_CARD_REF,
  record: record!,
  nth: 0,
  depth: 'shallow',
};
const DEEP_TASK: Task = { ...SHALLOW_TASK, depth: 'deep' };
const TASKS: readonly Task[] = [
  { kind: 'review', card: HOUSE_CARD_REF, record: record!, earlier: null },
  SHALLOW_TASK,
  { kind: 'drill', card: HOUSE_CARD_REF, drill: drillOf([sampledDeal({ pairs: 2 })]) },
  { kind: 'drill', card: HOUSE_CARD_REF, drill: 'none' },
];
const OPTIONS: WorkOptions = {
  kind: 'analyze',
  priority: 'live',
  fairnessKey: 'room',
  affinityKey: null,
  maxWaitMs: 600_000,
  timeoutMs: 60_000,
};

let runner: TaskRunner;
beforeAll(() => {
  runner = createTaskRunner(simd);
});

let workers: TaskWorker[] = [];
afterEach(async () => {
  await Promise.all(workers.map((worker) => worker.end()));
  workers = [];
});

/** As it is built: a thread from source would first have to compile it. */
const BUILT_ENTRY = new URL('../../dist/server/workers/worker-entry.js', import.meta.url);

function thread(entry: URL = BUILT_ENTRY): TaskWorker {
  const worker = workerInThread(true, entry);
  workers.push(worker);
  return worker;
}

function script(text: string): URL {
  return new URL(`data:text/javascript,${encodeURIComponent(text)}`);
}

/** One thread at a time, the first of them with this entry. */
function poolBeginningWith(entry?: URL) {
  const clock = new FakeClock();
  const newWorker = () => (workers.length === 0 ? thread(entry) : thread());
  const pool = new WorkerPool({ clock, log: createLog('silent'), newWorker, maxWorkers: 1, maxQueue: 10 });
  return { pool, clock };
}

test('a thread answers byte for byte as the same work in process, and fails a task that makes no sense', async () => {
  const inThread = thread();
  const inProcess = workerInProcess(Promise.resolve(runner));
  for (const task of TASKS) {
    expect(JSON.stringify(await inThread.run(task))).toBe(JSON.stringify(await inProcess.run(task)));
  }
  const nonsense: Task = { ...SHALLOW_TASK, nth: 99 };
  await expect(inThread.run(nonsense)).rejects.toMatchObject({ facts: { error: 'RangeError' } });
  await expect(inProcess.run(nonsense)).rejects.toThrow(RangeError);
});

test('a thread that is told to stop breaks its analysis off, and does the next one', async () => {
  const worker = thread();
  await worker.run(SHALLOW_TASK);
  const stopped = worker.run(DEEP_TASK);
  worker.stop();
  await expect(stopped).rejects.toMatchObject({ name: 'TaskFailed' });
  expect(await worker.run(SHALLOW_TASK)).toEqual(runner.run(SHALLOW_TASK));
});

test('a thread in an endless loop is ended when its time is over, and another does its task', async () => {
  const { pool, clock } = poolBeginningWith(script('for(;;);'));
  const pending = pool.run(() => SHALLOW_TASK, OPTIONS);
  clock.advance(60_000);
  expect(await pending.result).toEqual(runner.run(SHALLOW_TASK));
  expect(workers).toHaveLength(2);
  await pool.close();
});

test('a thread that takes too much memory is ended, and another does its task', async () => {
  const { pool } = poolBeginningWith(
    script('const all = []; for (;;) all.push(new Array(1e6).fill(all.length));'),
  );
  expect(await pool.run(() => SHALLOW_TASK, OPTIONS).result).toEqual(runner.run(SHALLOW_TASK));
  expect(workers).toHaveLength(2);
  await pool.close();
});

test('when a thread is killed in the middle of a task, another does it', async () => {
  const { pool } = poolBeginningWith();
  const pending = pool.run(() => SHALLOW_TASK, OPTIONS);
  await workers[0]!.end();
  expect(await pending.result).toEqual(runner.run(SHALLOW_TASK));
  expect(workers).toHaveLength(2);
  await pool.close();
});

test('a server whose threads are at work ends cleanly when asked to', async () => {
  const server = startProcess({ REVIEW_WORKERS: '2' });
  try {
    const url = await server.url;
    const guest = await openRoom({ url }, { ...ALONE, bots: ['thoughtful', 'casual', 'strong'] });
    const peer = await sitDown({ url }, guest);
    await peer.untilTable((table) => table.round === 1);
    await peer.choose(anyAnswer(ownView(peer), stream('ends', 'x')));
    server.child.kill('SIGTERM');
    expect(await peer.ended).toBe(CLOSE.restarting);
    expect(await server.ended).toEqual([0, null]);
  } finally {
    server.child.kill('SIGKILL');
  }
});
