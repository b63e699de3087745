// Deep analyses in a room: asked for as people choose, sent to their seats as they come, aborted with the round.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { PROGRESS_MS } from '../../server/reviews/room-reviews.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { type AskedAnalysis, analysisOf, type FakeAnalyzer, fakeAnalyzer } from '../kit/fake-analysis.ts';
import { nextTurn } from '../kit/fake-workers.ts';
import {
  ALONE,
  anyAnswer,
  deal,
  openRoom,
  ownView,
  playOn,
  sitDown,
  tableOfFour,
} from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

let server: TestServer;
let fake: FakeAnalyzer;
beforeEach(async () => {
  fake = fakeAnalyzer();
  server = await startServer({ analyzer: fake.analyzer });
});
afterEach(() => server.stop());

function reviewsOf({ messages }: Peer): Review[] {
  return messages.flatMap((m) => (m.kind === 'review' ? [m.review] : []));
}

function depthsOf({ choices }: Review): number {
  return choices.filter(({ analysis }) => analysis.depth === 'deep').length;
}

/** Those of a seat that are not over yet, oldest first. */
function open(seat?: number): AskedAnalysis[] {
  return fake.asked.filter(({ isOver, record }) => !isOver() && (seat === undefined || record.seat === seat));
}

async function count(peer: Peer, reviews: number): Promise<void> {
  await peer.until(`review ${reviews}`, () => reviewsOf(peer).length >= reviews);
}

describe('four people', () => {
  test('Z1 get first answers at the close, then deep analyses as they come, each of their own seat alone', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'four')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    for (const peer of peers) expect(depthsOf(reviewsOf(peer)[0]!)).toBe(0);

    // One choice of seat 2 is analyzed: all four get their reviews when it is time, at once and in the same manner.
    open(2)[0]!.answer(analysisOf(8));
    await nextTurn();
    server.clock.advance(PROGRESS_MS - 1);
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    for (const peer of peers) expect(reviewsOf(peer)).toHaveLength(1);
    server.clock.advance(1);
    await Promise.all(peers.map((peer) => count(peer, 2)));
    expect(peers.map((peer) => depthsOf(reviewsOf(peer)[1]!))).toEqual([0, 0, 1, 0]);

    for (const choice of open()) choice.answer(analysisOf(16));
    await Promise.all(peers.map((peer) => count(peer, 3)));
    for (const [seat, peer] of peers.entries()) {
      await peer.roundTrip();
      const reviews = reviewsOf(peer);
      expect(reviews).toHaveLength(3);
      expect(new Set(reviews.map((review) => review.seat))).toEqual(new Set([seat]));
      expect(depthsOf(reviews[2]!)).toBe(reviews[2]!.choices.length);
    }
  });

  test('V1 have each choice analyzed from their own record, as it is made and before its step is over', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    expect(fake.asked).toEqual([]);
    const [first] = peers as [Peer, Peer, Peer, Peer];
    await first.choose(anyAnswer(ownView(first), stream('offered', 'x')));
    const [asked] = fake.asked;
    expect(fake.asked).toHaveLength(1);
    expect(asked).toMatchObject({ nth: 0, record: { seat: 0, start: ownView(first).record.start } });
    expect(ownView(first).record.steps).toEqual([]);
    expect(asked!.record.steps).toHaveLength(1);
    await Promise.all(peers.map((peer) => playOn(peer, 'offered')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    for (const [seat, peer] of peers.entries()) {
      const own = fake.asked.filter(({ record }) => record.seat === seat);
      expect(own.map(({ nth }) => nth)).toEqual(reviewsOf(peer)[0]!.choices.map((_, nth) => nth));
      for (const { record } of own) expect(record.start).toEqual(ownView(peer).record.start);
    }
  });

  test('WK7 have each step prepared as it opens, from their own view, until they have chosen', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    const steps = () => fake.prepared.map(({ record, open }) => [record.seat, open.step]);
    expect(steps().sort()).toEqual([0, 1, 2, 3].map((seat) => [seat, 'first-right']));
    for (const { record } of fake.prepared) expect(record).toEqual(ownView(peers[record.seat]!).record);
    const [first] = peers as [Peer, Peer, Peer, Peer];
    const random = stream('prepared', 'x');
    await first.choose(anyAnswer(ownView(first), random));
    const aborted = () =>
      fake.prepared.filter(({ isAborted }) => isAborted()).map(({ record }) => record.seat);
    expect(aborted()).toEqual([0]);
    // Nothing is prepared twice, and whoever goes away needs nothing more.
    await first.choose({ kind: 'withdraw', step: 'first-right' });
    expect(steps()).toHaveLength(4);
    await Promise.all(peers.map((peer) => peer.choose(anyAnswer(ownView(peer), random))));
    await Promise.all(peers.map((peer) => peer.untilTable(() => ownView(peer).record.steps.length === 1)));
    expect(steps().slice(4).sort()).toEqual([0, 1, 2, 3].map((seat) => [seat, 'first-across']));
    await server.app.close();
    expect(aborted()).toHaveLength(8);
  });

  test('C4 who withdraw a pass have its analysis aborted, and the next choice analyzed in its place', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    const [first] = peers as [Peer, Peer, Peer, Peer];
    const random = stream('back', 'x');
    await first.choose(anyAnswer(ownView(first), random));
    await first.choose({ kind: 'withdraw', step: 'first-right' });
    expect(fake.asked.map((choice) => choice.isAborted())).toEqual([true]);
    await first.choose(anyAnswer(ownView(first), random));
    expect(fake.asked.map((choice) => choice.isAborted())).toEqual([true, false]);
    expect(fake.asked[1]!.nth).toBe(0);
  });

  test('have their analyses wait behind tables in play once their round is closed', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'way', ({ stage }) => stage.phase === 'asking')));
    expect(new Set(open().map((choice) => choice.rank()))).toEqual(new Set(['live']));
    await Promise.all(peers.map((peer) => playOn(peer, 'way on')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    expect(new Set(open().map((choice) => choice.rank()))).toEqual(new Set(['background']));
  });
});

describe('WK9 whose page analyzes the own seat', () => {
  const ranksOf = (seat: number) => new Set(open(seat).map((choice) => choice.rank()));

  /** Four at a table, the first of whom says so. */
  async function oneLeft() {
    const table = await tableOfFour(server);
    const [first, ...others] = table.peers as [Peer, Peer, Peer, Peer];
    await deal(table.peers);
    const say = async (by: 'page' | 'server', round = 1) => {
      const id = first.newId();
      first.send({ kind: 'analyzed-by', id, round, by });
      expect((await first.answerTo(id)).kind).toBe('ack');
    };
    return { ...table, first, others, say };
  }

  test('nothing is prepared for the seat, and its choices go last, until the page takes it back', async () => {
    const { first, others, say } = await oneLeft();
    const stopped = () =>
      fake.prepared.filter(({ isAborted }) => isAborted()).map(({ record }) => record.seat);
    await say('page', 2);
    expect(stopped()).toEqual([]);
    await say('page');
    expect(stopped()).toEqual([0]);
    const random = stream('left', 'x');
    for (const peer of [first, ...others]) await peer.choose(anyAnswer(ownView(peer), random));
    await first.untilTable(() => ownView(first).record.steps.length === 1);
    await first.roundTrip();
    expect(fake.prepared.filter(({ record }) => record.seat === 0)).toHaveLength(1);
    expect([0, 1, 2, 3].map((seat) => [...ranksOf(seat)])).toEqual([['spare'], ['live'], ['live'], ['live']]);
    await say('server');
    expect([...ranksOf(0)]).toEqual(['live']);
  });

  test('nobody is kept waiting for them, and the table hears of them when all are there', async () => {
    const { peers, first, others, say } = await oneLeft();
    await say('page');
    await Promise.all(peers.map((peer) => playOn(peer, 'left')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    expect([...ranksOf(0)]).toEqual(['spare']);
    for (const seat of [1, 2, 3]) for (const choice of open(seat)) choice.answer(analysisOf(8));
    await Promise.all(peers.map((peer) => count(peer, 2)));
    const more = ({ messages }: Peer) => messages.flatMap((m) => (m.kind === 'review' ? [m.more] : []));
    expect(peers.map((peer) => more(peer).at(-1))).toEqual([true, false, false, false]);
    const [one, ...left] = open(0);
    one!.answer(analysisOf(8));
    await nextTurn();
    server.clock.advance(PROGRESS_MS);
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    for (const peer of peers) expect(reviewsOf(peer)).toHaveLength(2);
    for (const choice of left) choice.answer(analysisOf(8));
    await Promise.all(peers.map((peer) => count(peer, 3)));
    expect(depthsOf(reviewsOf(first)[2]!)).toBe(reviewsOf(first)[2]!.choices.length);
    expect(others.map((peer) => more(peer).length)).toEqual([3, 3, 3]);
  });

  test('they wait like others again when its connection is over, and what was left out is asked for anew', async () => {
    const { peers, first, say, guests } = await oneLeft();
    await say('page');
    await Promise.all(peers.map((peer) => playOn(peer, 'gone')));
    await count(first, 1);
    const [dropped, ...others] = open(0);
    dropped!.answer(null);
    await nextTurn();
    const asked = fake.asked.length;
    await first.close();
    await expect.poll(() => fake.asked.length).toBe(asked + 1);
    expect(fake.asked.at(-1)).toMatchObject({ nth: dropped!.nth, decisionId: dropped!.decisionId });
    expect([...ranksOf(0)]).toEqual(['background']);
    for (const choice of [...others, ...open(0)]) choice.answer(analysisOf(8));
    const back = await sitDown(server, guests[0]!);
    const { review } = await back.review();
    expect(depthsOf(review)).toBe(review.choices.length);
  });
});

describe('one person', () => {
  async function alone(seed: string): Promise<Peer> {
    const peer = await sitDown(server, await openRoom(server, ALONE));
    await peer.untilTable((table) => table.round === 1);
    await playOn(peer, seed);
    await count(peer, 1);
    return peer;
  }

  test('keeps the first answer where no deep analysis could be made', async () => {
    const peer = await alone('given up');
    const [gone, ...others] = open();
    gone!.answer(null);
    for (const choice of others) choice.answer(analysisOf(8));
    await count(peer, 2);
    const [first, last] = reviewsOf(peer);
    expect(last!.choices[gone!.nth]).toEqual(first!.choices[gone!.nth]);
    expect(depthsOf(last!)).toBe(last!.choices.length - 1);
    expect(peer.messages.flatMap((m) => (m.kind === 'review' ? [m.more] : []))).toEqual([true, false]);
  });

  test('is told where a loaded server analyzed less closely', async () => {
    const peer = await alone('busy');
    const [hurried, ...others] = open();
    hurried!.answer(analysisOf(4, true));
    for (const choice of others) choice.answer(analysisOf(8));
    await count(peer, 2);
    const [first, last] = reviewsOf(peer);
    expect(last!.method).toContain(first!.method);
    expect(last!.method).toMatch(/fewer times than usual/);
    expect(last!.choices[hurried!.nth]!.analysis).toMatchObject({ sampledDeals: 4 });
  });

  test('who comes back finds the analyses that came meanwhile', async () => {
    const guest = await openRoom(server, ALONE);
    const peer = await sitDown(server, guest);
    await peer.untilTable((table) => table.round === 1);
    await playOn(peer, 'away');
    await count(peer, 1);
    await peer.close();
    for (const choice of open()) choice.answer(analysisOf(8));
    const again = await sitDown(server, guest);
    const { review } = await again.review();
    expect(depthsOf(review)).toBe(review.choices.length);
  });

  test('RS3 who comes back gets the last message with it byte for byte, and nothing of it after the next deal', async () => {
    const guest = await openRoom(server, ALONE);
    const peer = await sitDown(server, guest);
    await peer.untilTable((table) => table.round === 1);
    await playOn(peer, 'packed');
    await count(peer, 1);
    for (const choice of open()) choice.answer(analysisOf(8));
    await count(peer, 2);
    const isReview = (frame: string) => frame.startsWith('{"kind":"review"');
    const last = peer.frames.filter(isReview).at(-1);
    await peer.close();
    for (let turn = 0; turn < 2; turn++) {
      const again = await sitDown(server, guest);
      await again.review();
      expect(again.frames.filter(isReview)).toEqual([last]);
      if (turn === 0) await again.close();
      else {
        await again.act({ kind: 'ready', ready: true });
        await again.untilTable((table) => table.round === 2);
        await again.close();
      }
    }
    const late = await sitDown(server, guest);
    await late.roundTrip();
    expect(late.frames.filter(isReview)).toEqual([]);
  });

  test('asks for the next deal, and what was still to be analyzed of the last one is aborted', async () => {
    const peer = await alone('next');
    const left = open();
    expect(left.length).toBeGreaterThan(5);
    await peer.act({ kind: 'ready', ready: true });
    await peer.untilTable((table) => table.round === 2);
    expect(left.every((choice) => choice.isAborted())).toBe(true);
    await peer.roundTrip();
    expect(reviewsOf(peer)).toHaveLength(1);
  });

  test('is the last to be analyzed for when the server closes: everything is aborted', async () => {
    await alone('stop');
    await server.app.close();
    expect(open()).toEqual([]);
  });
});
