// Hands with threads of their own: they answer as the twin in process does, and die without taking a table along.
import { afterEach, beforeAll, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { createDesk, type Desk } from '../../server/work/desk.ts';
import { type Hand, handInProcess } from '../../server/work/hand.ts';
import { Pool } from '../../server/work/pool.ts';
import { HOUSE_SLIP, type Task } from '../../server/work/task.ts';
import { handInThread } from '../../server/work/thread.ts';
import { CLOSE, stream } from '../../shared-engine/index.ts';
import { vectors } from '../kit/analysts.ts';
import { FakeClock } from '../kit/clock.ts';
import { described, drillOf } from '../kit/drills.ts';
import { ALONE, anyAnswer, openRoom, ownView, sitDown } from '../kit/http-client.ts';
import { records } from '../kit/reviews.ts';
import { startProcess } from '../kit/server-process.ts';

const [record] = records('thread', 1);
const TASKS: readonly Task[] = [
  { kind: 'review', card: HOUSE_SLIP, record: record!, earlier: null },
  { kind: 'judge', card: HOUSE_SLIP, record: record!, nth: 0, depth: 'shallow' },
  { kind: 'drill', card: HOUSE_SLIP, drill: drillOf([described({ pairs: 2 })]) },
  { kind: 'drill', card: HOUSE_SLIP, drill: 'none' },
];

let desk: Desk;
beforeAll(() => {
  desk = createDesk(vectors);
});

let hands: Hand[] = [];
afterEach(async () => {
  await Promise.all(hands.map((hand) => hand.end()));
  hands = [];
});

function thread(entry?: URL): Hand {
  const hand = handInThread({ behind: true }, entry);
  hands.push(hand);
  return hand;
}

test('answers byte for byte as the same work in process, and fails a task that makes no sense', async () => {
  const own = thread();
  const twin = handInProcess(Promise.resolve(desk));
  for (const task of TASKS) {
    expect(JSON.stringify(await own.run(task))).toBe(JSON.stringify(await twin.run(task)));
  }
  const nonsense: Task = { kind: 'judge', card: HOUSE_SLIP, record: record!, nth: 99, depth: 'shallow' };
  await expect(own.run(nonsense)).rejects.toMatchObject({ facts: { error: 'RangeError' } });
  await expect(twin.run(nonsense)).rejects.toThrow(RangeError);
});

test('in an endless loop, the thread is ended when its time is over, and its task is done by another', async () => {
  const clock = new FakeClock();
  const endless = new URL('data:text/javascript,for(;;);');
  const newHand = () => (hands.length === 0 ? thread(endless) : thread());
  const pool = new Pool({ clock, log: createLog('silent'), newHand, hands: 1, patience: 60_000 });
  const order = pool.ask(() => TASKS[1]!, 'live');
  clock.advance(60_000);
  expect(await order.answer).toEqual(desk.do(TASKS[1]!));
  expect(hands).toHaveLength(2);
  await pool.close();
});

test('killed in the middle of a task, the task is done by another thread', async () => {
  const log = createLog('silent');
  const pool = new Pool({ clock: new FakeClock(), log, newHand: () => thread(), hands: 1, patience: 60_000 });
  const order = pool.ask(() => TASKS[1]!, 'live');
  await hands[0]!.end();
  expect(await order.answer).toEqual(desk.do(TASKS[1]!));
  expect(hands).toHaveLength(2);
  await pool.close();
});

test('a server whose threads are at work ends cleanly when asked to', async () => {
  const server = startProcess({ REVIEW_WORKERS: '2' });
  try {
    const guest = await openRoom(
      { url: await server.url },
      { ...ALONE, bots: ['thoughtful', 'casual', 'strong'] },
    );
    const peer = await sitDown({ url: await server.url }, guest);
    await peer.untilTable((table) => table.round === 1);
    await peer.choose(anyAnswer(ownView(peer), stream('ends', 'x')));
    server.child.kill('SIGTERM');
    expect(await peer.ended).toBe(CLOSE.restarting);
    expect(await server.ended).toEqual([0, null]);
  } finally {
    server.child.kill('SIGKILL');
  }
});
