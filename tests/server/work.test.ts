// What the server asks of its pool: reviews, closer looks and bots; and what it does when the pool has no answer.
import { describe, expect, test } from 'vitest';
import { readConfig } from '../../server/config.ts';
import { createLog } from '../../server/log.ts';
import { botsInProcess } from '../../server/work/bots.ts';
import { playingCard } from '../../server/work/cards.ts';
import { createDesk } from '../../server/work/desk.ts';
import { handInProcess } from '../../server/work/hand.ts';
import { pooledJudges } from '../../server/work/judges.ts';
import { Pool } from '../../server/work/pool.ts';
import { pooledBots } from '../../server/work/pooled-bots.ts';
import { pooledReviewer } from '../../server/work/reviewer.ts';
import { HOUSE_SLIP } from '../../server/work/task.ts';
import { botStream, chooseFor, HOUSE_CARD, reviewRound, seatView } from '../../shared-engine/index.ts';
import { analystOf, vectors } from '../kit/analysts.ts';
import { FakeClock } from '../kit/clock.ts';
import { scriptedHands, settled } from '../kit/fake-workers.ts';
import { judgedIn } from '../kit/fake-analysis.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { opened, seedNamed } from '../kit/rounds.ts';

const card = playingCard({ kind: 'house' });
const [record] = records('work', 1);
const log = createLog('silent');

function scriptedPool(hands = 1) {
  const scripted = scriptedHands();
  const pool = new Pool({ clock: new FakeClock(), log, newHand: scripted.newHand, hands, patience: 1000 });
  return { pool, scripted };
}

function poolInProcess(): Pool {
  const newHand = () => handInProcess(Promise.resolve(createDesk(vectors)));
  return new Pool({ clock: new FakeClock(), log, newHand, hands: 1, patience: 1000 });
}

describe('closer looks', () => {
  const { judgement } = judgedIn(8);

  test('are given a seat’s record and the name of the card, and nothing more', () => {
    const { pool, scripted } = scriptedPool();
    pooledJudges({ pool, depth: 'deep', mostWaiting: 5 }).judge({ record: record!, nth: 3, card });
    expect(scripted.taken.map(({ task }) => task)).toEqual([
      { kind: 'judge', card: HOUSE_SLIP, record, nth: 3, depth: 'deep' },
    ]);
  });

  test('are less close while too many wait, say so, and are close again when there is time', async () => {
    const { pool, scripted } = scriptedPool();
    const judges = pooledJudges({ pool, depth: 'deep', mostWaiting: 2 });
    const all = [0, 1, 2, 3, 4].map((nth) => judges.judge({ record: record!, nth, card }).result);
    const depths: unknown[] = [];
    for (let next = scripted.taken[0]; next; next = scripted.taken[0]) {
      depths.push(next.task.kind === 'judge' && next.task.depth);
      next.done({ kind: 'judge', judgement });
      await settled();
    }
    expect(depths).toEqual(['deep', 'shallow', 'deep', 'deep', 'deep']);
    expect((await Promise.all(all)).map((judged) => judged?.lowered)).toEqual([
      false,
      true,
      false,
      false,
      false,
    ]);
  });

  test('are shorter at the second try, and missing after that', async () => {
    const { pool, scripted } = scriptedPool();
    const { result } = pooledJudges({ pool, depth: 'deep', mostWaiting: 5 }).judge({
      record: record!,
      nth: 0,
      card,
    });
    scripted.taken[0]!.die();
    await settled();
    expect(scripted.taken[0]!.task).toMatchObject({ depth: 'shallow' });
    scripted.taken[0]!.die();
    expect(await result).toBeNull();
  });
});

describe('first reviews', () => {
  test('come from the pool, byte for byte those made here', async () => {
    const review = await pooledReviewer(poolInProcess()).review(record!, card);
    expect(JSON.stringify(review)).toBe(JSON.stringify(reviewRound(record!, houseKernel)));
  });

  test('are made here where the pool cannot', async () => {
    const { pool } = scriptedPool();
    await pool.close();
    expect(await pooledReviewer(pool).review(record!, card)).toEqual(reviewRound(record!, houseKernel));
  });

  test('of a card of the table’s own go out with its file, under a name that is no other card’s', async () => {
    const file = { ...HOUSE_CARD, name: 'Nearly the house card' };
    const own = playingCard({ kind: 'file', file });
    const { pool, scripted } = scriptedPool(2);
    const reviewer = pooledReviewer(pool);
    void reviewer.review(record!, own);
    void reviewer.review(record!, playingCard({ kind: 'file', file: { ...file, name: 'Another' } }));
    const slips = scripted.taken.map(({ task }) => task.card);
    expect(slips[0]).toEqual({ key: own.key, file });
    expect(slips[1]!.key).not.toBe(own.key);
    expect((await pooledReviewer(poolInProcess()).review(record!, own)).cardName).toBe(file.name);
  });
});

describe('bots', () => {
  const { round } = opened('pooled bots');
  const view = seatView(round, 0);
  const seed = seedNamed('pooled bots');
  const request = { view, card, seed, style: 'thoughtful' } as const;

  test('that take their time choose in the pool as they would anywhere', async () => {
    const bots = pooledBots(poolInProcess(), botsInProcess(log));
    const anywhere = chooseFor('thoughtful', view, houseKernel, botStream(seed, 'first-right', 0), analystOf);
    expect(await bots.choose(request)).toEqual(anywhere);
  });

  test('take nothing there but their seat’s view and one draw', () => {
    const { pool, scripted } = scriptedPool();
    void pooledBots(pool, botsInProcess(log)).choose(request);
    const [{ task }] = scripted.taken as [(typeof scripted.taken)[0]];
    expect(task).toEqual({
      kind: 'choose',
      card: HOUSE_SLIP,
      view,
      style: 'thoughtful',
      seed: botStream(seed, 'first-right', 0).below(2 ** 31),
    });
    expect(JSON.stringify(task)).not.toContain(seed);
  });

  test('are stood in for by a quick one where the pool has no answer', async () => {
    const { pool } = scriptedPool();
    await pool.close();
    const here = botsInProcess(log);
    const choice = await pooledBots(pool, here).choose(request);
    expect(choice).toEqual(await here.choose({ ...request, style: 'strong' }));
  });

  test('that answer at a glance never wait for the pool', async () => {
    const { pool, scripted } = scriptedPool();
    const here = botsInProcess(log);
    for (const style of ['casual', 'guarded', 'random'] as const) {
      expect(await pooledBots(pool, here).choose({ ...request, style })).toEqual(
        await here.choose({ ...request, style }),
      );
    }
    expect(scripted.made()).toBe(0);
  });
});

describe('settings', () => {
  test('leave one core free unless told otherwise, and are refused by name', () => {
    const read = readConfig({});
    expect(read.ok && read.config.review.workers).toBeGreaterThanOrEqual(1);
    expect(readConfig({ REVIEW_WORKERS: '0', REVIEW_DEPTH: 'shallow', REVIEW_QUEUE: '3' })).toMatchObject({
      ok: true,
      config: { review: { workers: 0, depth: 'shallow', queue: 3 } },
    });
    const refused = readConfig({ REVIEW_WORKERS: '-1', REVIEW_DEPTH: 'bottomless' });
    expect(!refused.ok && refused.problems.join()).toMatch(/REVIEW_WORKERS.*REVIEW_DEPTH/);
  });
});
