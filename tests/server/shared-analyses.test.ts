// What a class shares: one review for equal records, one deep analysis for equal decisions, aborted with its last asker.
import { describe, expect, test } from 'vitest';
import { playingCard } from '../../server/playing-card.ts';
import { analysisRequests } from '../../server/reviews/analysis-requests.ts';
import { sharedAnalyzer } from '../../server/reviews/shared-analyses.ts';
import { sharedReviewer } from '../../server/reviews/shared-reviews.ts';
import type { AnalysisRank, AnalysisRequest } from '../../server/work-ports.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { classOf } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { analysisOf, fakeAnalyzer } from '../kit/fake-analysis.ts';
import { houseKernel, mixedRound } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const card = playingCard({ kind: 'house' });
const DRILL = drillOf([dealOf({ kind: 'random', seed: seedNamed('shared') })]);
const [one, two] = classOf(DRILL, ['strong', 'random']).map(({ record }) => record) as [
  SeatRecord,
  SeatRecord,
];
const ANALYZED = analysisOf(8);

function requestFor(record: SeatRecord, nth = 0): AnalysisRequest {
  return analysisRequests(record, card, 'class')[nth]!;
}

describe('first reviews in a class', () => {
  const ofClass = (record: SeatRecord) => ({ record, card, fairnessKey: 'class' });

  test('are made once for equal records, and each for others', async () => {
    const asked: SeatRecord[] = [];
    const reviewer = sharedReviewer({
      async review({ record }) {
        asked.push(record);
        return reviewRound(record, houseKernel);
      },
    });
    const [first, again, other] = await Promise.all(
      [one, structuredClone(one), two].map((record) => reviewer.review(ofClass(record))),
    );
    expect(again).toBe(first);
    expect(other).not.toEqual(first);
    expect(asked).toEqual([one, two]);
  });

  test('that failed are made anew for the next who asks', async () => {
    let tries = 0;
    const reviewer = sharedReviewer({
      async review({ record }) {
        if (++tries === 1) throw new Error('the worker is gone');
        return reviewRound(record, houseKernel);
      },
    });
    await expect(reviewer.review(ofClass(one))).rejects.toThrow('the worker is gone');
    expect(await reviewer.review(ofClass(one))).toEqual(reviewRound(one, houseKernel));
  });
});

describe('the id of a decision', () => {
  const { record } = seatView(mixedRound('ids').round, 1);
  const idsOf = (of: SeatRecord, playing = card) =>
    analysisRequests(of, playing, 'room').map(({ decisionId }) => decisionId);

  test('is the same whatever came after it, and wherever it is computed', () => {
    const all = idsOf(record);
    expect(new Set(all).size).toBe(all.length);
    for (let steps = 1; steps <= record.steps.length; steps++) {
      const shorter: SeatRecord = structuredClone({ ...record, steps: record.steps.slice(0, steps) });
      expect(all.slice(0, idsOf(shorter).length)).toEqual(idsOf(shorter));
    }
  });

  test('changes with the seat, with what was known and with the card', () => {
    const own = playingCard({ kind: 'file', file: { ...HOUSE_CARD, name: 'Another' } });
    const others = [
      idsOf(record, own),
      idsOf(one),
      idsOf(two),
      idsOf(seatView(mixedRound('ids').round, 2).record),
    ];
    const [first] = idsOf(record);
    expect(others.flat()).not.toContain(first);
  });
});

describe('deep analyses in a class', () => {
  function shared() {
    const fake = fakeAnalyzer();
    const analyzer = sharedAnalyzer(fake.analyzer);
    const ask = (record: SeatRecord, nth = 0, rank: AnalysisRank = 'live') => {
      const abort = new AbortController();
      const pending = analyzer.analyze(requestFor(record, nth), abort.signal, rank);
      return { ...pending, abort: () => abort.abort() };
    };
    return { asked: fake.asked, ask };
  }

  test('are made once for equal decisions, while later steps differ, and are known from then on', async () => {
    const { asked, ask } = shared();
    const shorter = { ...one, steps: one.steps.slice(0, 1) };
    const pending = [ask(one), ask(shorter), ask(two), ask(one, 1)];
    expect(asked).toHaveLength(3);
    asked[0]!.answer(ANALYZED);
    expect(await pending[1]!.result).toBe(ANALYZED);
    expect(await ask(shorter).result).toBe(ANALYZED);
    expect(asked).toHaveLength(3);
  });

  test('WK9 stand as they do for the most urgent who asked, and are aborted with the last of them', () => {
    const { asked, ask } = shared();
    const [first, second, third] = [ask(one, 0, 'spare'), ask(one), ask(one, 0, 'spare')];
    const rank = () => asked[0]!.rank();
    expect(rank()).toBe('live');
    second.rank('background');
    second.rank('background');
    expect(rank()).toBe('background');
    second.abort();
    second.abort();
    expect([rank(), asked[0]!.isAborted()]).toEqual(['spare', false]);
    third.rank('interactive');
    third.abort();
    expect([rank(), asked[0]!.isAborted()]).toEqual(['spare', false]);
    first.abort();
    expect(asked[0]!.isAborted()).toBe(true);
    ask(one);
    expect(asked).toHaveLength(2);
  });

  test('WK7 are prepared once for all who know the same', () => {
    const fake = fakeAnalyzer();
    const analyzer = sharedAnalyzer(fake.analyzer);
    const open = { kind: 'vote', step: 'vote' } as const;
    const prepare = (record: SeatRecord) => {
      const abort = new AbortController();
      analyzer.prepare({ record: { ...record, steps: [] }, open, card, fairnessKey: 'class' }, abort.signal);
      abort.abort();
    };
    for (const record of [one, two, one]) prepare(record);
    expect(fake.prepared.map(({ isAborted }) => isAborted())).toEqual([false]);
    analyzer.prepare({ record: one, open, card, fairnessKey: 'class' }, new AbortController().signal);
    expect(fake.prepared).toHaveLength(2);
  });

  test('that failed may be asked for again', async () => {
    const { asked, ask } = shared();
    const pending = ask(one);
    asked[0]!.answer(null);
    expect(await pending.result).toBeNull();
    ask(one);
    expect(asked).toHaveLength(2);
  });
});
