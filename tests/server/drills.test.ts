// Drills prepared beside the tables: in parts, within one budget, for those who still wait, each sender in turn.
import { describe, expect, onTestFinished, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/playing-card.ts';
import type { Drills } from '../../server/work-ports.ts';
import { CompiledCards } from '../../server/workers/compiled-cards.ts';
import { pooledDrills } from '../../server/workers/drills.ts';
import { beginDrill, continueDrill } from '../../server/workers/prepare-drill.ts';
import { HOUSE_CARD_REF } from '../../server/workers/task.ts';
import { workOptions } from '../../server/workers/work-budgets.ts';
import { WorkerPool } from '../../server/workers/worker-pool.ts';
import type { Constraint } from '../../shared-engine/drill/format.ts';
import { DRILL_BUDGET } from '../../shared-engine/drill/search-budget.ts';
import { CLASSES_PATH } from '../../shared-engine/protocol/paths.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { TERMS } from '../kit/class-room.ts';
import { FakeClock } from '../kit/clock.ts';
import { dealOf, drillOf, HARD_CONSTRAINT, preparedDrill } from '../kit/drills.ts';
import { fakeWorkers, nextTurn } from '../kit/fake-workers.ts';
import { post } from '../kit/http-client.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const card = playingCard({ kind: 'house' });
const seed = seedNamed('drills');
const DRILL = drillOf([dealOf({ kind: 'random', seed }, { seat: 2, dealer: 3 })]);
const goesOn = () => false;

function fakePool() {
  const fake = fakeWorkers();
  const log = createLog('silent');
  const clock = new FakeClock();
  const pool = new WorkerPool({ clock, log, newWorker: fake.newWorker, maxWorkers: 1, maxQueue: 100 });
  return { pool, fake, drills: pooledDrills(pool, new CompiledCards(pool, clock)) };
}

function requestOf(sender: string, signal = new AbortController().signal) {
  return { card, sender, signal };
}

/** A part of a drill that goes on. */
const STEP = { isDone: false, part: { drill: DRILL, deals: [], problems: [], spent: 1 } } as const;

test('a deal is rotated until the seat it was made for is seat 0', () => {
  const prepared = preparedDrill(DRILL, houseKernel);
  if (!prepared.ok) throw new Error('the drill was rejected');
  const { racks } = dealTiles({ seed, dealer: 3 });
  expect(prepared.drill).toEqual(DRILL);
  expect(prepared.deals[0]!.dealer).toBe(1);
  expect(prepared.deals[0]!.prepared).toEqual([2, 3, 0, 1].map((seat) => facesOf(racks[seat]!)));
});

test('of many constraints too rare to meet only a few are tried, and those are told', () => {
  const constraint = { inARow: 9, pungs: { from: 1 }, flowers: 0, jokers: 0 } as const;
  const rare = Array.from({ length: 5 }, (_, nth) =>
    dealOf({ kind: 'sampled', constraint, seed }, { id: `rare-${nth}` }),
  );
  const prepared = preparedDrill(drillOf(rare), houseKernel);
  if (prepared.ok) throw new Error('a rack was found');
  expect(prepared.problems.map(({ code, deal }) => [code, deal])).toEqual([
    ['too-rare', 'rare-0'],
    ['too-rare', 'rare-1'],
    ['too-rare', 'rare-2'],
  ]);
});

test('a worker gets the drill as it was sent and the name of the card; a drill that is lost twice has no answer', async () => {
  const { drills, fake } = fakePool();
  const [good, lost] = [DRILL, 'none'].map((drill) => drills.prepare(drill, requestOf('one')));
  await nextTurn();
  expect(fake.taken.map(({ task }) => task)).toEqual([{ kind: 'drill', card: HOUSE_CARD_REF, drill: DRILL }]);
  const prepared = preparedDrill(DRILL, houseKernel);
  fake.taken[0]!.done({ kind: 'drill', step: { isDone: true, prepared } });
  expect(await good).toEqual(prepared);
  for (let tries = 0; tries < 2; tries++) {
    await nextTurn();
    fake.taken[0]!.die();
  }
  expect(await lost).toBeNull();
});

test('a drill that is nested too deeply, which no thread could be sent, never reaches a worker', async () => {
  const { drills, fake } = fakePool();
  const deep: unknown = JSON.parse(`${'['.repeat(100_000)}${']'.repeat(100_000)}`);
  expect(await drills.prepare(deep, requestOf('one'))).toMatchObject({ problems: [{ code: 'too-large' }] });
  expect(fake.made()).toBe(0);
});

describe('WK4 all deals of a drill share one budget', () => {
  const wish = (id: string, constraint: Constraint) =>
    dealOf({ kind: 'sampled', constraint, seed: seedNamed(id) }, { id });
  const drill = drillOf([wish('easy', { pairs: 2 }), wish('hard', HARD_CONSTRAINT)]);

  test('and the one at which it is used up is named, with what to change', () => {
    const part = { drill, deals: [], problems: [], spent: DRILL_BUDGET - 1_000 };
    const step = continueDrill(part, houseKernel, goesOn);
    expect(step).toMatchObject({ isDone: true, prepared: { ok: false, problems: [{ deal: 'hard' }] } });
    const [problem] = step.isDone && !step.prepared.ok ? step.prepared.problems : [];
    expect(problem).toMatchObject({
      code: 'used-up',
      deal: 'hard',
      message:
        'Deal 2: the search for a rack ended here, because this drill has used up what drawing its racks may take. Loosen "8 tiles in a row in one suit" here or the rarest racks of the deals before, or make two drills of it.',
    });
  });

  test('whatever the parts in which it is prepared, which change nothing', () => {
    const two = drillOf([wish('first', { pairs: 2 }), wish('second', { inARow: { from: 5 } })]);
    const step = beginDrill(two, houseKernel, goesOn);
    const whole = preparedDrill(two, houseKernel);
    const second = continueDrill(
      { drill: two, deals: whole.ok ? whole.deals.slice(0, 1) : [], problems: [], spent: 14 },
      houseKernel,
      goesOn,
    );
    expect(step).toEqual({ isDone: true, prepared: whole });
    expect(second).toEqual(step);
  });
});

describe('WK5 when its sender has hung up', () => {
  test('a drill that runs is broken off in its worker, which does the next one', async () => {
    const { drills, fake, pool } = fakePool();
    const hangUp = new AbortController();
    const left = drills.prepare(DRILL, requestOf('one', hangUp.signal));
    const next = drills.prepare(DRILL, requestOf('another'));
    await nextTurn();
    hangUp.abort();
    expect(await left).toBeNull();
    const [broken] = fake.taken;
    expect(broken!.isStopped()).toBe(true);
    broken!.fail();
    await nextTurn();
    const prepared = preparedDrill(DRILL, houseKernel);
    fake.taken[0]!.done({ kind: 'drill', step: { isDone: true, prepared } });
    expect(await next).toEqual(prepared);
    expect([fake.made(), fake.ended(), pool.running]).toEqual([1, 0, 0]);
  });

  test('a drill that waits, before its first part or between two, is not begun', async () => {
    const { drills, fake, pool } = fakePool();
    const hangUp = new AbortController();
    const between = drills.prepare(DRILL, requestOf('one', hangUp.signal));
    const busy = drills.prepare(DRILL, requestOf('another'));
    const before = drills.prepare(DRILL, requestOf('one', hangUp.signal));
    await nextTurn();
    fake.taken[0]!.done({ kind: 'drill', step: STEP });
    await nextTurn();
    hangUp.abort();
    expect(await Promise.all([between, before])).toEqual([null, null]);
    expect(pool.waiting + pool.running).toBe(1);
    await pool.close();
    expect(await busy).toBeNull();
  });

  test('no class is opened, even where its drill was prepared by then', async () => {
    let asked: (signal: AbortSignal) => void = () => {};
    const begun = new Promise<AbortSignal>((resolve) => {
      asked = resolve;
    });
    const prepared = preparedDrill(DRILL, houseKernel);
    const drills: Drills = {
      play: async () => null,
      prepare(_, { signal }) {
        asked(signal);
        return new Promise((resolve) => signal.addEventListener('abort', () => resolve(prepared)));
      },
    };
    const at = await startServer({ seed: 'hung up', drills });
    onTestFinished(() => at.stop());
    const body = JSON.stringify({ drill: DRILL, terms: TERMS, card: null });
    const headers = { 'content-type': 'application/json' };
    const hangUp = new AbortController();
    const sent = fetch(`${at.url}${CLASSES_PATH}`, { method: 'POST', headers, body, signal: hangUp.signal });
    const signal = await begun;
    hangUp.abort();
    await expect(sent).rejects.toThrow('aborted');
    await expect.poll(() => signal.aborted).toBe(true);
    await nextTurn();
    expect(await at.store.count()).toBe(0);
  });

  test('a search ends before its next rack', () => {
    let asked = 0;
    const isStopped = () => ++asked > 3;
    const hard = drillOf([dealOf({ kind: 'sampled', constraint: HARD_CONSTRAINT, seed })]);
    expect(() => beginDrill(hard, houseKernel, isStopped)).toThrow('stopped');
    expect(asked).toBe(4);
  });
});

describe('WK6 what is left of a hard drill waits for everybody else', () => {
  test('for openings of other senders and for tables in play', async () => {
    const { drills, fake, pool } = fakePool();
    const signal = new AbortController().signal;
    for (const sender of ['one', 'another']) void drills.prepare(DRILL, requestOf(sender, signal));
    await nextTurn();
    const order: string[] = [];
    const finish = async () => {
      const [{ task, done }] = [fake.taken[0]!];
      order.push(task.kind);
      done({ kind: 'drill', step: STEP });
      await nextTurn();
    };
    await finish();
    void drills.prepare(DRILL, requestOf('a teacher', signal));
    void pool.run(
      () => ({ kind: 'drill', card: HOUSE_CARD_REF, drill: null }),
      workOptions('analyze', 'a table', null),
    );
    await nextTurn();
    for (let n = 0; n < 5; n++) await finish();
    // Of the first two, of the teacher, of the table; then their parts in turn.
    expect(order).toEqual(['drill', 'drill', 'drill', 'drill', 'drill-part', 'drill-part']);
    await pool.close();
  });

  test('and more than four of one sender, or 32 in all, are told to try again', async () => {
    const { drills, fake, pool } = fakePool();
    const answers: (string | null)[] = [];
    const send = (sender: string) =>
      void drills.prepare(DRILL, requestOf(sender)).then((prepared) => prepared ?? answers.push(sender));
    // One runs and four wait.
    for (let n = 0; n < 6; n++) send('one');
    await nextTurn();
    expect(answers).toEqual(['one']);
    for (let n = 0; n < 29; n++) send(`other ${n}`);
    await nextTurn();
    expect(answers).toEqual(['one', 'other 28']);
    expect([fake.taken.length, pool.waiting]).toEqual([1, 32]);
    await pool.close();
  });
});

test('a class whose drill could not be prepared is rejected for now, and nothing is opened', async () => {
  const at = await startServer({
    seed: 'drills',
    drills: { prepare: async () => null, play: async () => null },
  });
  onTestFinished(() => at.stop());
  const response = await post(`${at.url}${CLASSES_PATH}`, { drill: DRILL, terms: TERMS, card: null });
  expect([response.status, (await response.json()).code]).toEqual([503, 'busy']);
  expect(await at.store.count()).toBe(0);
});
