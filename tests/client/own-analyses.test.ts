// A page that analyzes its own seat: what is done in which order, and how it completes the reviews of a server.
import { describe, expect, test } from 'vitest';
import { completedReviews } from '../../client/room/completed-reviews.ts';
import type { FollowRequest } from '../../client/workers/deep-analysis-worker.ts';
import { startOwnAnalyses } from '../../client/workers/own-analyses.ts';
import { createSeatWork, type KeyedAnalysis, type RecordedLedger } from '../../client/workers/seat-work.ts';
import {
  decisionKey,
  decisionsIn,
  withDeepAnalysis,
  withReducedBudget,
} from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { forFour } from '../../shared-engine/rules/deal/seat.ts';
import type { PendingDecision } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView, type View } from '../../shared-engine/rules/view/view.ts';
import { analysisOf, SAMPLE_LEDGER } from '../kit/fake-analysis.ts';
import { nextTurn } from '../kit/fake-workers.ts';
import { houseKernel, mixedRound } from '../kit/reviews.ts';
import { opened } from '../kit/rounds.ts';

const card = houseCard();
const closed = seatView(mixedRound('own').round, 1);
const offered = seatView(opened('own').round, 1);
const { record } = closed;
const keys = decisionsIn(record).map(decisionKey);

describe('the work for one seat', () => {
  const VOTE: PendingDecision = { kind: 'vote', step: 'vote' };
  const upTo = (steps: number): SeatRecord => ({ ...record, steps: record.steps.slice(0, steps) });

  function work() {
    const done: string[] = [];
    let goOn = () => {};
    const { follow } = createSeatWork({
      analyze(_, nth) {
        done.push(`choice ${nth}`);
        return analysisOf(8).analysis;
      },
      prepare: (_, { step }) => done.push(`open ${step}`),
      ledger: () => SAMPLE_LEDGER,
      onLedger: ({ start }) => done.push(start === record.start.join() ? 'ledger' : 'another ledger'),
      pause: () =>
        new Promise((resolve) => {
          goOn = resolve;
        }),
      onAnalysis: ({ key }) => done.push(`answer ${keys.indexOf(key)}`),
    });
    const next = async () => {
      goOn();
      await nextTurn();
    };
    return { done, follow, next };
  }

  test('begins with the choices that are made and prepares what is open, each of it once', async () => {
    const { done, follow, next } = work();
    follow({ record: upTo(1), open: VOTE, isClosed: false });
    for (let turn = 0; turn < 4; turn++) await next();
    expect(done).toEqual(['choice 0', 'answer 0', 'open vote']);
    follow({ record: upTo(1), open: VOTE, isClosed: false });
    await next();
    expect(done).toHaveLength(3);
    follow({ record: upTo(2), open: null, isClosed: false });
    for (let turn = 0; turn < 3; turn++) await next();
    expect(done.slice(3)).toEqual(['choice 1', 'answer 1']);
    // Luck and choices are told once, when nothing is left to choose.
    for (let turn = 0; turn < 3; turn++) {
      follow({ record: upTo(2), open: null, isClosed: true });
      await next();
    }
    expect(done.slice(5)).toEqual(['ledger']);
  });

  test('leaves what is not known any more, and goes on with what is', async () => {
    const { done, follow, next } = work();
    follow({ record: upTo(3), open: null, isClosed: false });
    expect(done).toEqual(['choice 0', 'answer 0']);
    // A choice was withdrawn.
    follow({ record: upTo(1), open: VOTE, isClosed: false });
    await next();
    expect(done.slice(2)).toEqual(['open vote']);
  });
});

describe('a table of the server', () => {
  const { analysis } = analysisOf(8);
  const first = reviewRound(record, houseKernel);

  function tableWith(view: View | null, round = 1): ServerMessage {
    const table: Table = {
      code: 'ABCDEFGH',
      you: view === null ? null : 1,
      mode: 'alone',
      seats: forFour(() => ({ kind: 'bot', name: 'Odo', style: 'strong' })),
      terms: STANDARD_TERMS.alone,
      card: { id: card.id, name: card.name },
      round,
      remaining: null,
      view,
    };
    return { kind: 'table', seq: 1, table };
  }

  function page() {
    const told: ServerMessage[] = [];
    const requests: FollowRequest[] = [];
    const claims: unknown[] = [];
    let tell: (answer: KeyedAnalysis | RecordedLedger) => void = () => {};
    let fail = () => {};
    let ended = 0;
    const reviews = completedReviews({
      loadCard: async () => card,
      loadStart: async () => (ports) =>
        startOwnAnalyses({
          ...ports,
          openWorker(onAnalysis, onFailure) {
            tell = onAnalysis;
            fail = onFailure;
            return { send: (request) => requests.push(request), end: () => ended++ };
          },
        }),
      onMessage: (message) => told.push(message),
      onAnalyzedBy: (round, by) => claims.push([round, by]),
    });
    const last = () => {
      const message = told.at(-1);
      if (message?.kind !== 'review') throw new Error('That is no review.');
      return { depths: message.review.choices.map(({ analysis: { depth } }) => depth), ...message };
    };
    return {
      told,
      requests,
      claims,
      reviews,
      last,
      fail: () => fail(),
      tell: (nth: number) => tell({ key: keys[nth]!, analysis }),
      settle: (start: string) => tell({ start, ledger: SAMPLE_LEDGER }),
      ended: () => ended,
    };
  }

  test('WK8 has its review completed by what the page analyzed from the view it was sent', async () => {
    const { told, requests, reviews, last, tell, settle } = page();
    reviews.receive(tableWith(offered));
    await nextTurn();
    reviews.receive(tableWith(closed));
    await nextTurn();
    expect(requests.map(({ follow }) => follow.record)).toEqual([offered.record, record]);
    expect(told).toHaveLength(2);
    tell(0);
    reviews.receive({ kind: 'review', round: 1, review: first, more: true });
    expect(last().depths.filter((depth) => depth === 'deep')).toHaveLength(1);
    expect(last().review).toEqual(withDeepAnalysis(first, 0, analysis));
    for (const nth of keys.keys()) tell(nth);
    expect(new Set(last().depths)).toEqual(new Set(['deep']));
    expect(last().more).toBe(false);
    settle('the tiles of another round');
    expect(last().review.ledger).toBeNull();
    settle(record.start.join());
    expect(last().review.ledger).toEqual(SAMPLE_LEDGER);
  });

  test('WK8 tells of each choice what was there first, whoever analyzed it', async () => {
    const { reviews, last, tell } = page();
    reviews.receive(tableWith(offered));
    await nextTurn();
    reviews.receive(tableWith(closed));
    await nextTurn();
    const ofServer = analysisOf(4).analysis;
    reviews.receive({ kind: 'review', round: 1, review: withDeepAnalysis(first, 0, ofServer), more: true });
    tell(0);
    expect(last().review.choices[0]!.analysis).toEqual(ofServer);
    tell(1);
    const more = withDeepAnalysis(withDeepAnalysis(first, 0, ofServer), 1, ofServer);
    reviews.receive({ kind: 'review', round: 1, review: more, more: false });
    expect(last().review.choices[1]!.analysis).toEqual(analysis);
    expect(last().more).toBe(true);
  });

  test('WK8 says nothing of how closely a server looked where all that it tells was found in the page', async () => {
    const { reviews, last, tell } = page();
    reviews.receive(tableWith(offered));
    await nextTurn();
    reviews.receive(tableWith(closed));
    await nextTurn();
    for (const nth of keys.keys()) tell(nth);
    const hurried = withReducedBudget(withDeepAnalysis(first, 0, analysisOf(4).analysis));
    reviews.receive({ kind: 'review', round: 1, review: hurried, more: false });
    expect(hurried.method).toMatch(/fewer times than usual/);
    expect(last().review.method).not.toMatch(/fewer times than usual/);
    reviews.stop();
    const other = page();
    other.reviews.receive(tableWith(offered));
    await nextTurn();
    other.reviews.receive(tableWith(closed));
    await nextTurn();
    other.reviews.receive({ kind: 'review', round: 1, review: hurried, more: false });
    for (const nth of keys.keys()) other.tell(nth);
    expect(other.last().review.method).toMatch(/fewer times than usual/);
  });

  test('WK9 is said to be analyzed in the page once a round, when the page does so and as long as its worker goes on', async () => {
    const { claims, reviews, requests, last, fail } = page();
    reviews.receive(tableWith(null));
    reviews.receive(tableWith(closed));
    await nextTurn();
    expect(claims).toEqual([]);
    reviews.receive(tableWith(offered, 2));
    await nextTurn();
    reviews.receive(tableWith(closed, 2));
    await nextTurn();
    expect(claims).toEqual([[2, 'page']]);
    reviews.receive({ kind: 'review', round: 2, review: first, more: false });
    expect(last().more).toBe(true);
    fail();
    fail();
    expect(claims).toEqual([
      [2, 'page'],
      [2, 'server'],
    ]);
    expect(last().more).toBe(false);
    const asked = requests.length;
    reviews.receive(tableWith(offered, 3));
    await nextTurn();
    expect([claims.length, requests.length]).toEqual([2, asked]);
  });

  test('WK8 comes as the server has it to whoever watches, and to a page that finds the round closed', async () => {
    const { told, requests, reviews, ended } = page();
    const review = { kind: 'review', round: 1, review: first, more: false } as const;
    for (const message of [tableWith(null), tableWith(closed), review]) reviews.receive(message);
    await nextTurn();
    expect(told.at(-1)).toEqual(review);
    expect(requests).toEqual([]);
    reviews.receive(tableWith(offered, 2));
    await nextTurn();
    expect(requests).toHaveLength(1);
    reviews.stop();
    expect(ended()).toBe(1);
  });
});
