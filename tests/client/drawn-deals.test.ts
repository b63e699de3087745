// Deals drawn in a worker ahead of need, and the questions of ten minutes and ten racks that are made of them.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { exercisesModel } from '../../client/practice/exercises/model.ts';
import { TODAY } from '../../client/practice/exercises/queue.ts';
import { drawnForWords, drawnWords } from '../../client/practice/exercises/strings.ts';
import { racksModel } from '../../client/practice/racks/model.ts';
import { closeDatabase } from '../../client/storage/history/database.ts';
import { storeRound } from '../../client/storage/history/rounds.ts';
import type { DrawAnswer, DrawRequest } from '../../client/workers/deep-analysis-worker.ts';
import { openDealDrawer } from '../../client/workers/drawn-deals.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import type { DrawnDeal } from '../../shared-engine/practice/drawn-deal.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { habitRounds } from '../kit/habit-history.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { STORED_CARD } from '../kit/stored-rounds.ts';

const [record] = records('a drawn deal', 1);
const deal = (kind: DrawnDeal['kind']): DrawnDeal => ({ record: record!, step: 'first-right', kind });

class FakeWorker {
  static last: FakeWorker;
  readonly asked: DrawRequest[] = [];
  isEnded = false;
  onmessage: ((event: { data: DrawAnswer }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  constructor() {
    FakeWorker.last = this;
  }
  postMessage(request: DrawRequest) {
    this.asked.push(request);
  }
  terminate() {
    this.isEnded = true;
  }
}

describe('deals drawn ahead', () => {
  beforeEach(() => vi.stubGlobal('Worker', FakeWorker));
  afterEach(() => vi.unstubAllGlobals());

  const open = (most: number) => {
    const tried: number[] = [];
    const wish = { kind: 'flower-given', firstPass: false } as const;
    const drawer = openDealDrawer({
      card: houseCard(),
      wish,
      seed: 'ahead',
      most,
      onTried: (count) => tried.push(count),
    });
    return { drawer, tried, worker: FakeWorker.last };
  };

  it('one is drawn before it is asked for and the next as soon as it is taken, each from a seed of its own', async () => {
    const { drawer, tried, worker } = open(2);
    expect(worker.asked).toHaveLength(1);
    worker.onmessage?.({ data: { tried: 1 } });
    worker.onmessage?.({ data: { drawn: deal('flower-given') } });
    expect(worker.asked).toHaveLength(1);
    expect(await drawer.next()).toEqual(deal('flower-given'));
    expect(tried).toEqual([1]);
    expect(worker.asked.map(({ seed, card }) => [seed, card === null])).toEqual([
      ['ahead 1', false],
      ['ahead 2', true],
    ]);
    const second = drawer.next();
    worker.onmessage?.({ data: { drawn: deal(null) } });
    expect(await second).toEqual(deal(null));
    // As many as were wanted.
    expect(worker.asked).toHaveLength(2);
  });

  it('whoever waits is told that there will be none when the worker fails or is stopped', async () => {
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => {});
    const { drawer, worker } = open(5);
    const waiting = drawer.next();
    worker.onerror?.({ message: 'no memory' });
    expect(await waiting).toBeNull();
    expect(await drawer.next()).toBeNull();
    expect(worker.isEnded).toBe(true);
    expect(warn).toHaveBeenCalledWith('no memory');
    warn.mockRestore();
  });
});

/** Gives what it is handed, one after the other, then null. */
function drawerOf(deals: readonly DrawnDeal[]) {
  const left = [...deals];
  return { next: async () => left.shift() ?? null, stop() {} };
}

describe('ten minutes', () => {
  beforeEach(async () => {
    await closeDatabase();
    globalThis.indexedDB = new IDBFactory();
  });

  const modelOf = (deals: readonly DrawnDeal[], wishes: unknown[] = []) =>
    exercisesModel({
      now: () => 0,
      startDeepAnalysis: () => () => {},
      card: houseCard(),
      openDrawer: ({ wish }) => {
        wishes.push(wish);
        return drawerOf(deals);
      },
    });

  it('are ten deals by chance for somebody without rounds, which is said', async () => {
    const wishes: unknown[] = [];
    const model = modelOf(
      Array.from({ length: TODAY }, () => deal(null)),
      wishes,
    );
    await model.open();
    for (let left = TODAY; left > 0; left--) {
      const source = { from: 'drawn', kind: null, wished: null } as const;
      expect(model.state.value).toMatchObject({ is: 'asking', left, source });
      expect(drawnWords(source)).toBe('No habit of yours stands out so far, so this deal comes by chance.');
      await model.next();
    }
    expect(model.state.value).toMatchObject({ is: 'none', isCutShort: false });
    expect(wishes).toEqual([{ kind: null, firstPass: false }]);
  });

  it('begin with what is due and go on with deals for the habit, without giving it away', async () => {
    for (const round of habitRounds()) await storeRound(round, STORED_CARD);
    const wishes: unknown[] = [];
    const model = modelOf([deal('flower-given'), deal(null)], wishes);
    await model.open();
    expect(model.state.value).toMatchObject({ is: 'asking', left: TODAY, source: { from: 'own' } });
    // It is drawn while that is answered.
    expect(wishes).toEqual([{ kind: 'flower-given', firstPass: false }]);
    await model.next();
    const drawn = { from: 'drawn', kind: 'flower-given', wished: 'flower-given' } as const;
    expect(model.state.value).toMatchObject({ is: 'asking', left: TODAY - 1, source: drawn });
    expect(drawnWords(drawn)).not.toMatch(/flower/);
    expect(drawnForWords(drawn)).toMatch(/our club-player bot gave a flower away/);
    await model.next();
    expect(drawnWords({ kind: null, wished: 'flower-given' })).toMatch(/No deal for your habit was found/);
    // The worker has failed: what was due has been asked.
    await model.next();
    expect(model.state.value).toMatchObject({ is: 'none', isCutShort: true });
  });
});

describe('ten racks for a habit', () => {
  it('are drawn one after the other, and by chance where none is found or drawn', async () => {
    const model = racksModel({
      kernel: houseKernel,
      newSeed: () => 'racks',
      openDrawer: () => drawerOf([deal('flower-given'), deal(null)]),
    });
    model.start('pass', { tempts: 'flower-given' });
    expect(model.state.value).toEqual({ is: 'drawing', tried: 0 });
    const seen: unknown[] = [];
    for (let nth = 1; nth <= 3; nth++) {
      await vi.waitFor(() => expect(model.state.value).toMatchObject({ is: 'asking', nth }));
      const now = model.state.value;
      if (now.is !== 'asking') throw new Error(now.is);
      seen.push([now.isByChance, sameTiles(now.asked.rack, record!.start)]);
      model.next();
    }
    expect(seen).toEqual([
      [false, true],
      [true, true],
      [true, false],
    ]);
  });
});

function sameTiles(one: readonly Face[], other: readonly Face[]): boolean {
  return one.join() === other.join();
}
