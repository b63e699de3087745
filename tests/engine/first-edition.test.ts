// Ten rounds in which the first edition's review contradicted itself, frozen with what it said.
import { describe, expect, test } from 'vitest';
import { analyzeDecision, withDeepAnalysis } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { analystOf } from '../kit/analysts.ts';
import { frozenRounds, replayed } from '../kit/frozen-rounds.ts';
import { houseKernel } from '../kit/reviews.ts';
import { contradictionsIn } from '../kit/story-contradictions.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';

const ROUNDS = frozenRounds('contradictions');
const analyst = analystOf(houseCard());

test('ten different rounds are frozen, with each kind of contradiction that was found', () => {
  expect(new Set(ROUNDS.map(({ seed }) => seed)).size).toBe(10);
  const kinds = new Set(ROUNDS.flatMap(({ contradictions }) => contradictions.map(({ kind }) => kind)));
  expect([...kinds].sort()).toEqual([
    'a better choice is told, and that there is none',
    'a pass or number that is told to be worse is praised',
    'called best beside a row that lies wholly above it',
    'the alternative named is not the top row of the chart',
    'the headline praises every choice, and the verdicts do not',
  ]);
});

describe.each(ROUNDS.map((frozen, n) => ({ n, frozen })))('frozen round $n', ({ frozen }) => {
  test('replays to its close, and its contradictions are about steps that its seat was asked in', () => {
    const { round } = replayed(frozen);
    expect(round.phase).toBe('closed');
    const { steps } = seatView(round, frozen.seat).record;
    const names = steps.map((step) =>
      step.kind === 'move' ? step.step : step.kind === 'ask' ? 'courtesy-ask' : step.kind,
    );
    for (const { step, said, beside } of frozen.contradictions) {
      if (step !== 'whole round') expect(names).toContain(step);
      expect(said).not.toBe(beside);
    }
  });

  test('is told without a contradiction today, however far its choices have been played on', () => {
    const { record } = seatView(replayed(frozen).round, frozen.seat);
    let review = reviewRound(record, houseKernel);
    expect(contradictionsIn(review)).toEqual([]);
    for (const nth of review.choices.keys()) {
      review = withDeepAnalysis(review, nth, analyzeDecision(analyst, record, nth, { budget: GLANCE }));
      expect(contradictionsIn(review)).toEqual([]);
    }
  });
});
