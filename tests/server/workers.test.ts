// What the server asks of its workers: reviews, analyses and bots; and what it does when they have no answer.
import { describe, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/playing-card.ts';
import { analysisRequests } from '../../server/reviews/analysis-requests.ts';
import { botsInProcess, pooledBots } from '../../server/workers/bots.ts';
import { CompiledCards } from '../../server/workers/compiled-cards.ts';
import { pooledAnalyzer, pooledReviewer } from '../../server/workers/reviews.ts';
import { HOUSE_CARD_REF } from '../../server/workers/task.ts';
import { createTaskRunner } from '../../server/workers/task-runner.ts';
import { workerInProcess } from '../../server/workers/worker.ts';
import { WorkerPool } from '../../server/workers/worker-pool.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { botRandom } from '../../shared-engine/bots/finish-round.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { analystOf, simd } from '../kit/analysts.ts';
import { FakeClock } from '../kit/clock.ts';
import { analysisOf } from '../kit/fake-analysis.ts';
import { fakeWorkers, nextTurn } from '../kit/fake-workers.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { opened, seedNamed } from '../kit/rounds.ts';

const card = playingCard({ kind: 'house' });
const [record] = records('work', 1);
const log = createLog('silent');
const { signal } = new AbortController();
const requests = analysisRequests(record!, card, 'room');
const reviewRequest = { record: record!, card, fairnessKey: 'room' };

function fakePool(maxWorkers = 1) {
  const fake = fakeWorkers();
  const { newWorker } = fake;
  const clock = new FakeClock();
  const pool = new WorkerPool({ clock, log, newWorker, maxWorkers, maxQueue: 100 });
  return { pool, cards: new CompiledCards(pool, clock), fake };
}

function inOneProcess() {
  const newWorker = () => workerInProcess(Promise.resolve(createTaskRunner(simd)));
  const clock = new FakeClock();
  const pool = new WorkerPool({ clock, log, newWorker, maxWorkers: 1, maxQueue: 100 });
  return { pool, cards: new CompiledCards(pool, clock) };
}

describe('deep analyses', () => {
  const { analysis } = analysisOf(8);

  test('are given a seat’s record and the name of the card, and nothing more', async () => {
    const { pool, cards, fake } = fakePool();
    pooledAnalyzer({ pool, cards, depth: 'deep', maxQueue: 5 }).analyze(requests[3]!, signal, 'live');
    await nextTurn();
    expect(fake.taken.map(({ task }) => task)).toEqual([
      { kind: 'analyze', card: HOUSE_CARD_REF, record, nth: 3, depth: 'deep' },
    ]);
  });

  test('are less close while too many wait, say so, and are close again when there is time', async () => {
    const { pool, cards, fake } = fakePool();
    const analyzer = pooledAnalyzer({ pool, cards, depth: 'deep', maxQueue: 2 });
    const all = requests.slice(0, 5).map((request) => analyzer.analyze(request, signal, 'live').result);
    await nextTurn();
    const depths: unknown[] = [];
    for (let next = fake.taken[0]; next; next = fake.taken[0]) {
      depths.push(next.task.kind === 'analyze' && next.task.depth);
      next.done({ kind: 'analyze', analysis });
      await nextTurn();
    }
    expect(depths).toEqual(['deep', 'shallow', 'deep', 'deep', 'deep']);
    const reduced = (await Promise.all(all)).map((result) => result?.reducedBudget);
    expect(reduced).toEqual([false, true, false, false, false]);
  });

  test('are shorter at the second try, and missing after that', async () => {
    const { pool, cards, fake } = fakePool();
    const analyzer = pooledAnalyzer({ pool, cards, depth: 'deep', maxQueue: 5 });
    const { result } = analyzer.analyze(requests[0]!, signal, 'live');
    await nextTurn();
    fake.taken[0]!.die();
    await nextTurn();
    expect(fake.taken[0]!.task).toMatchObject({ depth: 'shallow' });
    fake.taken[0]!.die();
    expect(await result).toBeNull();
  });

  test('of two tables are made in turns, and those of one seat by one worker', async () => {
    const { pool, cards, fake } = fakePool();
    const analyzer = pooledAnalyzer({ pool, cards, depth: 'deep', maxQueue: 50 });
    const other = analysisRequests(records('another', 1)[0]!, card, 'other room');
    for (const request of [...requests.slice(0, 3), other[0]!]) analyzer.analyze(request, signal, 'live');
    await nextTurn();
    const rooms: boolean[] = [];
    for (let next = fake.taken[0]; next; next = fake.taken[0]) {
      rooms.push(next.task.kind === 'analyze' && next.task.record === record);
      next.done({ kind: 'analyze', analysis });
      await nextTurn();
    }
    expect(rooms).toEqual([true, true, false, true]);
  });
});

describe('first reviews', () => {
  test('come from the workers, byte for byte those made in this process', async () => {
    const { pool, cards } = inOneProcess();
    const review = await pooledReviewer(pool, cards).review(reviewRequest);
    expect(JSON.stringify(review)).toBe(JSON.stringify(reviewRound(record!, houseKernel)));
  });

  test('on the house card are made in this process where the workers cannot', async () => {
    const { pool, cards } = fakePool();
    await pool.close();
    expect(await pooledReviewer(pool, cards).review(reviewRequest)).toEqual(
      reviewRound(record!, houseKernel),
    );
  });
});

describe('bots', () => {
  const { round } = opened('pooled bots');
  const view = seatView(round, 0);
  const seed = seedNamed('pooled bots');
  const request = { view, card, seed, style: 'thoughtful', fairnessKey: 'room' } as const;

  test('that roll deals out choose in a worker as they would anywhere', async () => {
    const { pool, cards } = inOneProcess();
    const bots = pooledBots(pool, cards, botsInProcess(log));
    const anywhere = chooseFor('thoughtful', view, houseKernel, botRandom(seed, 'first-right', 0), analystOf);
    expect(await bots.choose(request)).toEqual(anywhere);
  });

  test('send a worker nothing but their seat’s view and one random number', async () => {
    const { pool, cards, fake } = fakePool();
    void pooledBots(pool, cards, botsInProcess(log)).choose(request);
    await nextTurn();
    const task = fake.taken[0]!.task;
    expect(task).toEqual({
      kind: 'choose',
      card: HOUSE_CARD_REF,
      view,
      style: 'thoughtful',
      seed: botRandom(seed, 'first-right', 0).below(2 ** 31),
    });
    expect(JSON.stringify(task)).not.toContain(seed);
  });

  test('are replaced by a quick one where the workers have no answer', async () => {
    const { pool, cards } = fakePool();
    await pool.close();
    const inProcess = botsInProcess(log);
    const choice = await pooledBots(pool, cards, inProcess).choose(request);
    expect(choice).toEqual(await inProcess.choose({ ...request, style: 'strong' }));
  });

  test('that are quick never wait for a worker on the house card', async () => {
    const { pool, cards, fake } = fakePool();
    const inProcess = botsInProcess(log);
    for (const style of ['casual', 'guarded', 'random'] as const) {
      const choice = await pooledBots(pool, cards, inProcess).choose({ ...request, style });
      expect(choice).toEqual(await inProcess.choose({ ...request, style }));
    }
    expect(fake.made()).toBe(0);
  });
});
