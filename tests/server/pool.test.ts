// The pool's order, and what it does when hands die, hang or fail.
import { describe, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { type Order, Pool, type Urgency } from '../../server/work/pool.ts';
import { type Answer, HOUSE_SLIP, type Task } from '../../server/work/task.ts';
import { seatView } from '../../shared-engine/index.ts';
import { FakeClock } from '../kit/clock.ts';
import { scriptedHands, settled } from '../kit/fake-workers.ts';
import { opened } from '../kit/rounds.ts';

const { record } = seatView(opened('pool').round, 0);
const DONE: Answer = { kind: 'choose', choice: null };

/** A task with a number of its own. */
function task(nth: number): Task {
  return { kind: 'judge', card: HOUSE_SLIP, record, nth, depth: 'deep' };
}

function pool(hands = 1) {
  const clock = new FakeClock();
  const lines: string[] = [];
  const log = createLog('info', { write: (line) => void lines.push(line) });
  const scripted = scriptedHands();
  const made = new Pool({ clock, log, newHand: scripted.newHand, hands, patience: 1000 });
  const ask = (nth: number, urgency: Urgency = 'live'): Order => made.ask(() => task(nth), urgency);
  const numbers = () => scripted.taken.map(({ task: t }) => (t.kind === 'judge' ? t.nth : null));
  /** Ends the oldest task that is being done, and the ones after it, and answers the order they were taken in. */
  async function drain(): Promise<(number | null)[]> {
    const order: (number | null)[] = [];
    for (let next = scripted.taken[0]; next; next = scripted.taken[0]) {
      order.push(numbers()[0]!);
      next.done(DONE);
      await settled();
    }
    return order;
  }
  return { pool: made, clock, lines, scripted, ask, numbers, drain };
}

describe('the order', () => {
  test('tables in play come before closed rounds, each in the order they came', async () => {
    const { ask, drain } = pool();
    ask(0, 'after');
    ask(1, 'after');
    ask(2, 'live');
    ask(3, 'after');
    ask(4, 'live');
    // The first was taken up before anything else was there.
    expect(await drain()).toEqual([0, 2, 4, 1, 3]);
  });

  test('what one person waits for comes before everything that is not begun', async () => {
    const { ask, drain } = pool();
    for (const [nth, urgency] of (['live', 'after', 'live', 'first', 'first'] as const).entries())
      ask(nth, urgency);
    expect(await drain()).toEqual([0, 3, 4, 2, 1]);
  });

  test('what gives way waits behind tables in play from then on', async () => {
    const { ask, drain } = pool();
    ask(0);
    const closed = ask(1);
    ask(2);
    closed.giveWay();
    expect(await drain()).toEqual([0, 2, 1]);
  });

  test('as many tasks are done at once as there are hands, and hands are used again', async () => {
    const { ask, numbers, drain, scripted } = pool(2);
    for (const nth of [0, 1, 2, 3]) ask(nth);
    expect(numbers()).toEqual([0, 1]);
    await drain();
    expect(scripted.made()).toBe(2);
    expect(scripted.ended()).toBe(0);
  });

  test('no hand is made before there is something to do, unless one is wanted warm', () => {
    const { pool: made, scripted } = pool(3);
    expect(scripted.made()).toBe(0);
    made.warm();
    made.warm();
    expect(scripted.made()).toBe(1);
  });

  test('a task is made when a hand takes it up, and knows how many wait behind it', async () => {
    const { pool: made, ask, drain } = pool();
    ask(0);
    const seen: number[] = [];
    for (const nth of [1, 2, 3]) {
      made.ask(({ waiting }) => {
        seen.push(waiting);
        return task(nth);
      }, 'live');
    }
    expect(seen).toEqual([]);
    await drain();
    expect(seen).toEqual([2, 1, 0]);
  });
});

describe('a hand that', () => {
  test('dies is replaced, and its task is done at the second try', async () => {
    const { ask, scripted, numbers } = pool();
    const order = ask(0);
    ask(1);
    scripted.taken[0]!.die();
    await settled();
    expect(numbers()).toEqual([0]);
    expect([scripted.made(), scripted.ended()]).toEqual([2, 1]);
    scripted.taken[0]!.done(DONE);
    expect(await order.answer).toEqual(DONE);
  });

  test('hangs is given up when its time is over by the clock', async () => {
    const { ask, clock, scripted, numbers } = pool();
    const order = ask(0);
    clock.advance(999);
    await settled();
    expect(scripted.ended()).toBe(0);
    clock.advance(1);
    await settled();
    expect([scripted.made(), scripted.ended()]).toEqual([2, 1]);
    // The one that hangs still holds the task it will never finish.
    expect(numbers()).toEqual([0, 0]);
    scripted.taken[1]!.done(DONE);
    expect(await order.answer).toEqual(DONE);
  });

  test('dies twice on a task leaves it without an answer, and the next task is done', async () => {
    const { ask, scripted, numbers } = pool();
    const order = ask(0);
    const next = ask(1);
    scripted.taken[0]!.die();
    await settled();
    scripted.taken[0]!.die();
    expect(await order.answer).toBeNull();
    await settled();
    expect(numbers()).toEqual([1]);
    scripted.taken[0]!.done(DONE);
    expect(await next.answer).toEqual(DONE);
  });

  test('fails is spoken of in the log, without a tile', async () => {
    const { ask, scripted, lines } = pool();
    ask(0);
    scripted.taken[0]!.die();
    await settled();
    expect(lines).toHaveLength(1);
    expect(JSON.parse(lines[0]!)).toMatchObject({ task: 'judge', attempt: 1, again: true });
    expect(record.start.filter((face) => lines[0]!.includes(face))).toEqual([]);
  });
});

describe('called off', () => {
  test('while it waits, a task is never done', async () => {
    const { ask, drain, pool: made } = pool();
    ask(0);
    const order = ask(1);
    order.callOff();
    expect(made.waiting).toBe(0);
    expect(await order.answer).toBeNull();
    expect(await drain()).toEqual([0]);
  });

  test('while it is being done, nobody hears of it, and a death does not bring it back', async () => {
    const { ask, scripted, numbers } = pool();
    const order = ask(0);
    order.callOff();
    expect(await order.answer).toBeNull();
    scripted.taken[0]!.die();
    await settled();
    expect(numbers()).toEqual([]);
  });
});

test('closing ends every hand and answers whoever waits with nothing', async () => {
  const { ask, pool: made, scripted } = pool();
  const orders = [ask(0), ask(1)];
  await made.close();
  expect(await Promise.all(orders.map(({ answer }) => answer))).toEqual([null, null]);
  expect(scripted.ended()).toBe(1);
  expect(await ask(2).answer).toBeNull();
  expect(scripted.made()).toBe(1);
});
