// The pool's contract for slow work, and what it does when workers die, hang or fail.
import { describe, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { HOUSE_CARD_REF, type Task, type TaskResult } from '../../server/workers/task.ts';
import { type LeftOutReason, REPORT_MS } from '../../server/workers/work-counts.ts';
import type { WorkOptions } from '../../server/workers/work-options.ts';
import { STOP_GRACE_MS, WorkerPool } from '../../server/workers/worker-pool.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { FakeClock } from '../kit/clock.ts';
import { fakeWorkers, nextTurn } from '../kit/fake-workers.ts';
import { opened } from '../kit/rounds.ts';

const { record } = seatView(opened('pool').round, 0);
const DONE: TaskResult = { kind: 'choose', choice: null };
const OPTIONS: WorkOptions = {
  kind: 'analyze',
  priority: 'live',
  fairnessKey: 'room',
  affinityKey: null,
  maxWaitMs: 5_000,
  timeoutMs: 1_000,
};

/** A task with a number of its own. */
function task(nth: number): Task {
  return { kind: 'analyze', card: HOUSE_CARD_REF, record, nth, depth: 'deep' };
}

function poolOf(maxWorkers = 1, maxQueue = 100) {
  const clock = new FakeClock();
  const lines: string[] = [];
  const log = createLog('info', { write: (line) => void lines.push(line) });
  const fake = fakeWorkers();
  const pool = new WorkerPool({ clock, log, newWorker: fake.newWorker, maxWorkers, maxQueue });
  const run = (nth: number, options: Partial<WorkOptions> = {}) =>
    pool.run(() => task(nth), { ...OPTIONS, ...options });
  const numbers = () => fake.taken.map((taken) => (taken.task.kind === 'analyze' ? taken.task.nth : null));
  const leftOut = (): [LeftOutReason, number][] =>
    pool.counts.all.map(({ reason, count }) => [reason, count]);
  /** Ends the oldest task that is being done, and the ones after it, and answers the order they were taken in. */
  async function drain(): Promise<(number | null)[]> {
    const order: (number | null)[] = [];
    for (let next = fake.taken[0]; next; next = fake.taken[0]) {
      order.push(numbers()[0]!);
      next.done(DONE);
      await nextTurn();
    }
    return order;
  }
  return { pool, clock, lines, fake, run, numbers, leftOut, drain };
}

describe('waiting work', () => {
  test('is taken by priority, and by turns of the rooms within one', async () => {
    const { run, drain } = poolOf();
    run(0, { fairnessKey: 'a' });
    run(1, { fairnessKey: 'a', priority: 'background' });
    run(2, { fairnessKey: 'a' });
    run(3, { fairnessKey: 'a' });
    run(4, { fairnessKey: 'b' });
    run(5, { fairnessKey: 'b', priority: 'interactive' });
    // The first was taken before anything else was there.
    expect(await drain()).toEqual([0, 5, 2, 4, 3, 1]);
  });

  test('whose priority is lowered goes behind tables in play from then on', async () => {
    const { run, drain } = poolOf();
    run(0);
    const closed = run(1);
    run(2);
    closed.rank('background');
    expect(await drain()).toEqual([0, 2, 1]);
  });

  test('whose priority is raised goes before tables in play, whatever is said of it later', async () => {
    const { run, drain } = poolOf();
    run(0);
    run(1);
    const revealed = run(2);
    revealed.rank('interactive');
    revealed.rank('background');
    expect(await drain()).toEqual([0, 2, 1]);
  });

  test('is done by as many workers at once as there may be, and workers are used again', async () => {
    const { run, numbers, drain, fake } = poolOf(2);
    for (const nth of [0, 1, 2, 3]) run(nth);
    expect(numbers()).toEqual([0, 1]);
    await drain();
    expect(fake.made()).toBe(2);
    expect(fake.ended()).toBe(0);
  });

  test('is the first reason to start a worker, unless one is wanted warm', () => {
    const { pool, fake } = poolOf(3);
    expect(fake.made()).toBe(0);
    pool.warm();
    pool.warm();
    expect(fake.made()).toBe(1);
  });

  test('becomes a task when a worker takes it, and knows how much waits behind it', async () => {
    const { pool, run, drain } = poolOf();
    run(0);
    const seen: number[] = [];
    for (const nth of [1, 2, 3]) {
      pool.run(({ waiting }) => {
        seen.push(waiting);
        return task(nth);
      }, OPTIONS);
    }
    expect(seen).toEqual([]);
    await drain();
    expect(seen).toEqual([2, 1, 0]);
  });

  test('of one record goes to the worker that did the last of it', async () => {
    const { run, fake } = poolOf(2);
    run(0, { affinityKey: 'a' });
    run(1, { affinityKey: 'b' });
    for (const taken of [...fake.taken]) taken.done(DONE);
    await nextTurn();
    run(2, { affinityKey: 'a' });
    run(3, { affinityKey: 'b' });
    expect(fake.taken.map(({ worker }) => worker)).toEqual([0, 1]);
    // A worker that is free takes what another knows rather than nothing.
    run(4, { affinityKey: 'b' });
    fake.taken[0]!.done(DONE);
    await nextTurn();
    expect(fake.taken.map(({ worker }) => worker)).toEqual([1, 0]);
  });

  test('that is older than it may be is answered with nothing and counted', async () => {
    const { run, clock, leftOut, drain } = poolOf();
    run(0, { timeoutMs: 100_000 });
    const old = run(1);
    clock.advance(4_999);
    const young = run(2);
    clock.advance(1);
    expect(await old.result).toBeNull();
    expect(leftOut()).toEqual([['too-old', 1]]);
    expect(await drain()).toEqual([0, 2]);
    expect(await young.result).toEqual(DONE);
  });

  test('that the queue has no room for is answered with nothing and counted, and the log says so now and then', async () => {
    const { run, clock, lines, leftOut } = poolOf(1, 2);
    const all = [0, 1, 2, 3, 4].map((nth) =>
      run(nth, { maxWaitMs: 10 * REPORT_MS, timeoutMs: 10 * REPORT_MS }),
    );
    expect(await Promise.all([all[3]!.result, all[4]!.result])).toEqual([null, null]);
    expect(leftOut()).toEqual([['queue-full', 2]]);
    expect(lines).toEqual([]);
    clock.advance(REPORT_MS);
    expect(lines.map((line) => JSON.parse(line))).toMatchObject([
      { leftOut: 2, inAll: [{ task: 'analyze', reason: 'queue-full', count: 2 }] },
    ]);
    clock.advance(REPORT_MS);
    expect(lines).toHaveLength(1);
  });
});

describe('a worker that', () => {
  test('dies is replaced, and its task is done at the second try', async () => {
    const { run, fake, numbers } = poolOf();
    const pending = run(0);
    run(1);
    fake.taken[0]!.die();
    await nextTurn();
    expect(numbers()).toEqual([0]);
    expect([fake.made(), fake.ended()]).toEqual([2, 1]);
    fake.taken[0]!.done(DONE);
    expect(await pending.result).toEqual(DONE);
  });

  test('hangs is ended when the time of its task is over by the clock', async () => {
    const { run, clock, fake, numbers } = poolOf();
    const pending = run(0);
    clock.advance(999);
    await nextTurn();
    expect(fake.ended()).toBe(0);
    clock.advance(1);
    await nextTurn();
    expect([fake.made(), fake.ended()]).toEqual([2, 1]);
    // The one that hangs still holds the task it will never finish.
    expect(numbers()).toEqual([0, 0]);
    fake.taken[1]!.done(DONE);
    expect(await pending.result).toEqual(DONE);
  });

  test('dies twice on a task leaves it without an answer, and the next task is done', async () => {
    const { run, fake, numbers, leftOut } = poolOf();
    const pending = run(0);
    const next = run(1);
    fake.taken[0]!.die();
    await nextTurn();
    fake.taken[0]!.die();
    expect(await pending.result).toBeNull();
    expect(leftOut()).toEqual([['failed', 1]]);
    await nextTurn();
    expect(numbers()).toEqual([1]);
    fake.taken[0]!.done(DONE);
    expect(await next.result).toEqual(DONE);
  });

  test('fails is spoken of in the log, without a tile', async () => {
    const { run, fake, lines } = poolOf();
    run(0);
    fake.taken[0]!.die();
    await nextTurn();
    expect(lines).toHaveLength(1);
    expect(JSON.parse(lines[0]!)).toMatchObject({ task: 'analyze', attempt: 1, again: true });
    expect(record.start.filter((face) => lines[0]!.includes(face))).toEqual([]);
  });
});

describe('aborted work', () => {
  test('that waits is never done', async () => {
    const { pool, run, drain } = poolOf();
    const abort = new AbortController();
    run(0);
    const pending = run(1, { signal: abort.signal });
    abort.abort();
    expect(pool.waiting).toBe(0);
    expect(await pending.result).toBeNull();
    expect(await drain()).toEqual([0]);
    expect(await run(2, { signal: abort.signal }).result).toBeNull();
  });

  test('that is being done is broken off, and its worker does the next task', async () => {
    const { run, fake, numbers, leftOut, lines } = poolOf();
    const abort = new AbortController();
    const pending = run(0, { signal: abort.signal });
    run(1);
    expect(fake.taken[0]!.isStopped()).toBe(false);
    abort.abort();
    expect(await pending.result).toBeNull();
    expect(fake.taken[0]!.isStopped()).toBe(true);
    fake.taken[0]!.fail();
    await nextTurn();
    expect(numbers()).toEqual([1]);
    expect([fake.made(), fake.ended(), leftOut(), lines]).toEqual([1, 0, [], []]);
    expect(fake.taken[0]!.isStopped()).toBe(false);
  });

  test('that is not broken off in time costs its worker, and is not tried again', async () => {
    const { run, clock, fake, numbers } = poolOf();
    const abort = new AbortController();
    run(0, { signal: abort.signal, timeoutMs: 60_000 });
    run(1, { timeoutMs: 60_000 });
    abort.abort();
    clock.advance(STOP_GRACE_MS);
    expect([fake.made(), fake.ended()]).toEqual([2, 1]);
    expect(numbers()).toEqual([0, 1]);
    fake.taken[0]!.die();
    await nextTurn();
    expect(numbers()).toEqual([1]);
  });
});

describe('work for idle hours', () => {
  const IDLE = { priority: 'idle', maxWaitMs: 60_000, timeoutMs: 60_000 } as const;

  test('WK7 is done when nothing else waits, counts nowhere, and is not missed where it is left out', async () => {
    const { pool, run, clock, leftOut, drain } = poolOf();
    const bound = { perKey: 2, inAll: 8 };
    run(0, { timeoutMs: 100_000 });
    for (const nth of [1, 2, 3]) run(nth, { ...IDLE, bound });
    run(4, { maxWaitMs: 100_000 });
    clock.advance(1000);
    expect([pool.waiting, pool.oldestMs]).toEqual([1, 1000]);
    expect(await drain()).toEqual([0, 4, 1, 2]);
    expect(leftOut()).toEqual([]);
  });

  test('WK7 is broken off for any other, and goes on where it was when that is done', async () => {
    const { run, fake, numbers, lines, leftOut } = poolOf();
    const idle = run(0, IDLE);
    run(1, IDLE);
    expect([numbers(), fake.taken[0]!.isStopped()]).toEqual([[0], false]);
    const wanted = run(2);
    expect(fake.taken[0]!.isStopped()).toBe(true);
    fake.taken[0]!.fail();
    await nextTurn();
    expect(numbers()).toEqual([2]);
    fake.taken[0]!.done(DONE);
    expect(await wanted.result).toEqual(DONE);
    await nextTurn();
    expect(numbers()).toEqual([0]);
    fake.taken[0]!.done(DONE);
    expect(await idle.result).toEqual(DONE);
    expect([fake.made(), fake.ended(), lines, leftOut()]).toEqual([1, 0, [], []]);
  });

  test('WK7 that is aborted never costs its worker, which may only be starting', async () => {
    const { run, clock, fake, numbers } = poolOf();
    const abort = new AbortController();
    run(0, { ...IDLE, signal: abort.signal });
    const wanted = run(1, { maxWaitMs: 60_000 });
    abort.abort();
    clock.advance(2 * STOP_GRACE_MS);
    expect([fake.made(), fake.ended(), numbers()]).toEqual([1, 0, [0]]);
    fake.taken[0]!.done(DONE);
    await nextTurn();
    fake.taken[0]!.done(DONE);
    expect(await wanted.result).toEqual(DONE);
  });

  test('WK7 that is aborted while it gives way is not taken up again', async () => {
    const { run, fake, numbers } = poolOf();
    const abort = new AbortController();
    const idle = run(0, { ...IDLE, signal: abort.signal });
    run(1);
    abort.abort();
    expect(await idle.result).toBeNull();
    fake.taken[0]!.fail();
    await nextTurn();
    expect(numbers()).toEqual([1]);
    fake.taken[0]!.done(DONE);
    await nextTurn();
    expect(numbers()).toEqual([]);
  });
});

describe('work that a page does itself', () => {
  const SPARE = { priority: 'spare', maxWaitMs: 60_000, timeoutMs: 60_000 } as const;

  test('WK9 is done last, counts nowhere, and is not missed where it is left out', async () => {
    const { pool, run, clock, leftOut, drain } = poolOf(1, 3);
    run(0, { timeoutMs: 100_000 });
    const left = [1, 2, 3, 4].map((nth) => run(nth, SPARE));
    run(5, { maxWaitMs: 100_000 });
    run(6, { ...SPARE, priority: 'idle' });
    clock.advance(1000);
    expect([pool.waiting, pool.isFull, pool.oldestMs]).toEqual([1, false, 1000]);
    expect(await left[3]!.result).toBeNull();
    expect(await drain()).toEqual([0, 5, 6, 1, 2, 3]);
    expect(leftOut()).toEqual([]);
  });

  test('WK9 waits like other work from the moment at which it is ranked so, and then breaks off what is prepared', async () => {
    const { run, fake, drain } = poolOf();
    run(0, { priority: 'idle', maxWaitMs: 60_000, timeoutMs: 60_000 });
    const pending = run(1, SPARE);
    expect(fake.taken[0]!.isStopped()).toBe(false);
    pending.rank('live');
    expect(fake.taken[0]!.isStopped()).toBe(true);
    fake.taken[0]!.fail();
    await nextTurn();
    expect(await drain()).toEqual([1, 0]);
  });

  test('WK9 is answered with nothing and counted where it is wanted after all and the queue is full', async () => {
    const { run, leftOut } = poolOf(1, 2);
    run(0);
    const pending = run(1, SPARE);
    run(2);
    run(3);
    pending.rank('live');
    expect(await pending.result).toBeNull();
    expect(leftOut()).toEqual([['queue-full', 1]]);
  });
});

test('closing ends every worker and answers whoever waits with nothing', async () => {
  const { run, pool, fake } = poolOf();
  const all = [run(0), run(1)];
  await pool.close();
  expect(await Promise.all(all.map(({ result }) => result))).toEqual([null, null]);
  expect(fake.ended()).toBe(1);
  expect(await run(2).result).toBeNull();
  expect(fake.made()).toBe(1);
});
