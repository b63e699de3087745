// Cards of somebody's own: compiled once, by a worker, for as long as they are in use; too large ones are rejected.
import { readdirSync, readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, onTestFinished, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { playingCard, storedCardFile } from '../../server/playing-card.ts';
import type { PlayingCard } from '../../server/ports.ts';
import { botsInProcess, pooledBots, simplestLegal } from '../../server/workers/bots.ts';
import { CompiledCards } from '../../server/workers/compiled-cards.ts';
import { pooledReviewer } from '../../server/workers/reviews.ts';
import { cardFromShared, shareCard } from '../../server/workers/shared-card.ts';
import { createTaskRunner } from '../../server/workers/task-runner.ts';
import { workerInProcess } from '../../server/workers/worker.ts';
import { WorkerPool } from '../../server/workers/worker-pool.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { compileCard } from '../../shared-engine/card/compile.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { ROOMS_PATH } from '../../shared-engine/protocol/paths.ts';
import { choiceObjection } from '../../shared-engine/rules/view/pending-decision.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { simd } from '../kit/analysts.ts';
import { cardOf, GOOD_PATTERN } from '../kit/card-files.ts';
import { FakeClock } from '../kit/clock.ts';
import { fakeWorkers, nextTurn } from '../kit/fake-workers.ts';
import { ALONE, post } from '../kit/http-client.ts';
import { hostileCard, largestCard } from '../kit/large-cards.ts';
import { records } from '../kit/reviews.ts';
import { opened, seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const log = createLog('silent');
const ownCard = (name: string): unknown => ({ ...cardOf(GOOD_PATTERN), name });
const [record] = records('own card', 1);
const view = seatView(opened('own card').round, 0);

function fakePool(maxQueue = 100) {
  const fake = fakeWorkers();
  const { newWorker } = fake;
  const clock = new FakeClock();
  const pool = new WorkerPool({ clock, log, newWorker, maxWorkers: 1, maxQueue });
  return { pool, fake, cards: new CompiledCards(pool, clock) };
}

/** A pool whose one worker is this thread, and the kinds of the tasks that it was given. */
function countingPool() {
  const inner = workerInProcess(Promise.resolve(createTaskRunner(simd)));
  const kinds: string[] = [];
  const newWorker = () => ({
    ...inner,
    run(task: Parameters<typeof inner.run>[0]) {
      kinds.push(task.kind);
      return inner.run(task);
    },
  });
  const clock = new FakeClock();
  const pool = new WorkerPool({ clock, log, newWorker, maxWorkers: 1, maxQueue: 100 });
  return { pool, clock, kinds, cards: new CompiledCards(pool, clock) };
}

async function checked(cards: CompiledCards, file: unknown): Promise<PlayingCard> {
  const card = await cards.check(file, 'sender');
  if (!card?.ok) throw new Error('the card was rejected');
  return playingCard(card.choice);
}

describe('WK1 a card in use is compiled once', () => {
  test('for all who send it, at one moment or later, and for all who play with it', async () => {
    const { cards, clock, kinds, pool } = countingPool();
    const [card, same] = await Promise.all([1, 2].map(() => checked(cards, ownCard('Once'))));
    expect(same).toBe(card);
    clock.advance(3_600_000);
    expect(await checked(cards, structuredClone(ownCard('Once')))).toBe(card);
    const reviewer = pooledReviewer(pool, cards);
    for (const fairnessKey of ['one table', 'another']) {
      await reviewer.review({ record: record!, card: card!, fairnessKey });
    }
    expect(kinds).toEqual(['check-card', 'review', 'review']);
    expect(cards.count).toBe(1);
  });

  test('however many other cards are sent meanwhile, and in whatever order its file is stored', async () => {
    const { cards, kinds } = countingPool();
    const inUse = await checked(cards, ownCard('In use'));
    for (let n = 0; n < 20; n++) await checked(cards, ownCard(`Other ${n}`));
    const loaded = storedCardFile(JSON.parse(JSON.stringify(inUse.file)));
    expect(loaded).toBe(inUse.file);
    expect(playingCard({ kind: 'file', file: loaded! })).toBe(inUse);
    expect(await cards.refOf(inUse, 'room')).not.toBeNull();
    expect(kinds.filter((kind) => kind === 'compile-card')).toEqual([]);
    expect(cards.count).toBe(21);
  });

  test('when a stored room comes back after a restart, by its first piece of work', async () => {
    const { cards, kinds } = countingPool();
    const file = storedCardFile(ownCard('Restarted'))!;
    const card = playingCard({ kind: 'file', file });
    await Promise.all(['bot', 'review'].map((key) => cards.refOf(card, key)));
    expect(kinds).toEqual(['compile-card']);
  });

  test('and takes no memory of the server’s a minute after it was sent, where nobody uses it', async () => {
    setFlagsFromString('--expose-gc');
    const collect: () => void = runInNewContext('gc');
    const { cards, clock } = countingPool();
    const held = await checked(cards, ownCard('Forgotten')).then((card) => new WeakRef(card));
    const isHeld = async () => {
      // What was looked at in this turn is held until it ends.
      await nextTurn();
      collect();
      return held.deref() !== undefined;
    };
    clock.advance(59_999);
    expect(await isHeld()).toBe(true);
    clock.advance(1);
    expect(await isHeld()).toBe(false);
  });

  test('into shared memory, from which every thread reads the same hands', () => {
    expect(cardFromShared(shareCard(houseCard()))).toEqual(houseCard());
  });
});

describe('WK2 the thread that serves tables compiles no card of somebody’s own', () => {
  test('no file outside the workers and the command line imports what compiles or checks one', () => {
    const folder = new URL('../../server/', import.meta.url).pathname;
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
      /\.ts$/.test(file),
    );
    const compiling = files.filter((file) =>
      /\b(?:compileCard|parseCard)\b/.test(readFileSync(folder + file, 'utf8')),
    );
    expect(compiling.sort()).toEqual(['cli/round-request.ts', 'workers/task-runner.ts']);
  });

  test('its bots choose in a worker, whatever their style, and reviews are made there', async () => {
    const { cards, kinds, pool } = countingPool();
    const card = await checked(cards, ownCard('Played'));
    const seed = seedNamed('own card');
    for (const style of ['typical', 'random', 'typical'] as const) {
      const choice = await pooledBots(pool, cards, botsInProcess(log)).choose({
        view,
        card,
        seed,
        style,
        fairnessKey: 'r',
      });
      expect(choiceObjection(view, choice)).toBeNull();
    }
    const review = await pooledReviewer(pool, cards).review({ record: record!, card, fairnessKey: 'r' });
    expect(review.cardName).toBe('Played');
    expect(kinds).toEqual(['check-card', 'choose', 'choose', 'choose', 'review']);
  });

  test('where the workers cannot, its bots choose the simplest pass and its review is left out', async () => {
    const { cards, pool } = fakePool();
    const card = playingCard({ kind: 'file', file: storedCardFile(ownCard('Alone'))! });
    await pool.close();
    const request = { view, card, seed: seedNamed('own card'), style: 'strong', fairnessKey: 'r' } as const;
    expect(await pooledBots(pool, cards, botsInProcess(log)).choose(request)).toEqual(simplestLegal(view));
    await expect(
      pooledReviewer(pool, cards).review({ record: record!, card, fairnessKey: 'r' }),
    ).rejects.toThrow('No worker could review');
  });

  test('a review on a card of one’s own is the one that any thread makes', async () => {
    const { cards, pool } = countingPool();
    const card = await checked(cards, ownCard('Same'));
    const review = await pooledReviewer(pool, cards).review({ record: record!, card, fairnessKey: 'r' });
    expect(review).toEqual(reviewRound(record!, createSwarKernel(compileCard(card.file))));
  });
});

describe('WK3 a card that costs too much is rejected in words', () => {
  test('F1 one of millions of hands, before any of them is built', async () => {
    const { cards } = countingPool();
    expect(await cards.check(hostileCard(), 'sender')).toEqual({
      ok: false,
      problems: [
        'Pattern "hostile-1": with it the card comes to more than 20000 hands; fix some of its variables with "where".',
      ],
    });
  });

  test('while the largest card that is allowed is compiled', async () => {
    const { cards } = countingPool();
    await checked(cards, largestCard('Largest'));
    expect(cards.count).toBe(1);
  });

  test('one that is nested too deeply never reaches a worker', async () => {
    const { cards, fake } = fakePool();
    const deep: unknown = JSON.parse(`${'['.repeat(100_000)}${']'.repeat(100_000)}`);
    expect(await cards.check(deep, 'sender')).toMatchObject({ ok: false, problems: [/nested too deep/] });
    expect(fake.made()).toBe(0);
  });

  test('one that two workers could not finish', async () => {
    const { cards, fake } = fakePool();
    const check = cards.check(ownCard('Heavy'), 'sender');
    for (let tries = 0; tries < 2; tries++) {
      fake.taken[0]!.die();
      await nextTurn();
    }
    expect(await check).toEqual({
      ok: false,
      problems: [
        'Card: checking it took more time or memory than one card is given; use fewer patterns, or fix some of their variables with "where".',
      ],
    });
  });

  test('while one that is not the sender’s fault may be sent again', async () => {
    const { cards } = fakePool(0);
    expect(await cards.check(ownCard('Waiting'), 'sender')).toBeNull();
    const at = await startServer({ seed: 'own cards', cards: { check: async () => null } });
    onTestFinished(() => at.stop());
    const response = await post(`${at.url}${ROOMS_PATH}`, { ...ALONE, card: ownCard('Waiting') });
    expect([response.status, (await response.json()).code]).toEqual([503, 'busy']);
  });
});
