// Deeper reviews in the room: asked for as people choose, told to their owners as they come, dropped with the round.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { PROGRESS_MS } from '../../server/reviews/room-reviews.ts';
import {
  type AnswerChoice,
  analyzeDecision,
  choiceAt,
  decisionsIn,
  type OfferedChoice,
  type Review,
  recordWithAnswer,
  type SeatRecord,
  type SeatStep,
  SHALLOW,
  seatView,
  stream,
} from '../../shared-engine/index.ts';
import { analystOf } from '../kit/analysts.ts';
import { type AskedChoice, analysisOf, type FakeAnalyzer, fakeAnalyzer } from '../kit/fake-analysis.ts';
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
import { houseKernel, mixedRound } from '../kit/reviews.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

let server: TestServer;
let scripted: FakeAnalyzer;
beforeEach(async () => {
  scripted = fakeAnalyzer();
  server = await startServer({ analyzer: scripted.analyzer });
});
afterEach(() => server.stop());

function reviewsOf({ messages }: Peer): Review[] {
  return messages.flatMap((m) => (m.kind === 'review' ? [m.review] : []));
}

function depthsOf({ choices }: Review): number {
  return choices.filter(({ analysis }) => analysis.depth === 'deep').length;
}

/** Those of a seat that are not over yet, oldest first. */
function open(seat?: number): AskedChoice[] {
  return scripted.asked.filter(
    (choice) => !choice.isOver() && (seat === undefined || choice.record.seat === seat),
  );
}

async function count(peer: Peer, reviews: number): Promise<void> {
  await peer.until(`review ${reviews}`, () => reviewsOf(peer).length >= reviews);
}

describe('four people', () => {
  test('Z1 get first answers at the close, then deeper ones as they come, each of their own seat alone', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'four')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    for (const peer of peers) expect(depthsOf(reviewsOf(peer)[0]!)).toBe(0);

    // One choice of seat 2 is judged: all four are told when it is time, at once and in the same manner.
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

  test('V1 are judged from their own records, as each choice is made and before its step is over', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    expect(scripted.asked).toEqual([]);
    const [first] = peers as [Peer, Peer, Peer, Peer];
    await first.choose(anyAnswer(ownView(first), stream('offered', 'x')));
    const [asked] = scripted.asked;
    expect(scripted.asked).toHaveLength(1);
    expect(asked).toMatchObject({ nth: 0, record: { seat: 0, start: ownView(first).record.start } });
    expect(ownView(first).record.steps).toEqual([]);
    expect(asked!.record.steps).toHaveLength(1);
    await Promise.all(peers.map((peer) => playOn(peer, 'offered')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    for (const [seat, peer] of peers.entries()) {
      const own = scripted.asked.filter(({ record }) => record.seat === seat);
      expect(own.map(({ nth }) => nth)).toEqual(reviewsOf(peer)[0]!.choices.map((_, nth) => nth));
      for (const { record } of own) expect(record.start).toEqual(ownView(peer).record.start);
    }
  });

  test('C4 what is taken back is called off, and the next choice is judged in its place', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    const [first] = peers as [Peer, Peer, Peer, Peer];
    const random = stream('back', 'x');
    await first.choose(anyAnswer(ownView(first), random));
    await first.choose({ kind: 'withdraw', step: 'first-right' });
    expect(scripted.asked.map((choice) => choice.wasCalledOff())).toEqual([true]);
    await first.choose(anyAnswer(ownView(first), random));
    expect(scripted.asked.map((choice) => choice.wasCalledOff())).toEqual([true, false]);
    expect(scripted.asked[1]!.nth).toBe(0);
  });

  test('give way to tables in play once their round is closed', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'way', ({ stage }) => stage.phase === 'asking')));
    expect(open().some((choice) => choice.gaveWay())).toBe(false);
    await Promise.all(peers.map((peer) => playOn(peer, 'way on')));
    await Promise.all(peers.map((peer) => count(peer, 1)));
    expect(open().every((choice) => choice.gaveWay())).toBe(true);
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

  test('keeps the first answer where no deeper one could be had', async () => {
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

  test('is told where a busy server looked less closely', async () => {
    const peer = await alone('busy');
    const [hurried, ...others] = open();
    hurried!.answer(analysisOf(4, true));
    for (const choice of others) choice.answer(analysisOf(8));
    await count(peer, 2);
    const [first, last] = reviewsOf(peer);
    expect(last!.method).toContain(first!.method);
    expect(last!.method).toMatch(/fewer worlds than usual/);
    expect(last!.choices[hurried!.nth]!.analysis).toMatchObject({ worlds: 4 });
  });

  test('who comes back finds the deeper answers that came meanwhile', async () => {
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

  test('asks for the next deal, and what was still to be judged of the last one is called off', async () => {
    const peer = await alone('next');
    const left = open();
    expect(left.length).toBeGreaterThan(5);
    await peer.act({ kind: 'ready', ready: true });
    await peer.untilTable((table) => table.round === 2);
    expect(left.every((choice) => choice.wasCalledOff())).toBe(true);
    await peer.roundTrip();
    expect(reviewsOf(peer)).toHaveLength(1);
  });

  test('leaves with the server, and everything is called off', async () => {
    await alone('stop');
    await server.app.close();
    expect(open()).toEqual([]);
  });
});

test('a choice judged before its step is over is judged as the closed record would have it', () => {
  const analyst = analystOf(houseKernel.card);
  const record = seatView(mixedRound('early').round, 1).record;
  const questions = decisionsIn(record);
  for (const nth of [0, 2, questions.length - 1]) {
    const { offered } = questions[nth]!;
    const early = recordWithAnswer(
      { ...record, steps: stepsBefore(record, offered.chosen) },
      choiceAt(offered.chosen, record.seat)!,
      'bot',
    );
    expect(analyzeDecision(analyst, early, nth, SHALLOW)).toEqual(
      analyzeDecision(analyst, record, nth, SHALLOW),
    );
  }
});

function stepsBefore({ steps }: SeatRecord, step: SeatStep): readonly SeatStep[] {
  return steps.slice(0, steps.indexOf(step));
}
