// The comparison of alternatives: intervals that hold, verdicts that follow from them, fresh deals for what is shown.
import { describe, expect, it, test } from 'vitest';
import { offeredChoice, offeredChoices } from '../../shared-engine/analysis/belief/situation.ts';
import { type Alternative, anyOf, passesOf } from '../../shared-engine/analysis/comparison/alternatives.ts';
import { analyze, createAnalyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import { SHALLOW_BUDGET } from '../../shared-engine/analysis/comparison/budget.ts';
import { compare } from '../../shared-engine/analysis/comparison/comparison.ts';
import { type Estimate, estimate } from '../../shared-engine/analysis/comparison/estimate.ts';
import { normalQuantile, studentQuantile } from '../../shared-engine/analysis/comparison/quantiles.ts';
import type { DealAction, DealSource } from '../../shared-engine/analysis/comparison/sampled-deals.ts';
import { screen } from '../../shared-engine/analysis/comparison/screen.ts';
import { SMALL_LOSS, verdictOf } from '../../shared-engine/analysis/comparison/verdict.ts';
import {
  analyzeDecision,
  analyzeOffered,
  decisionsIn,
  withDeepAnalysis,
} from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { RESULT_WIDTH } from '../../shared-engine/analysis/rollouts/batch.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createRng } from '../../shared-engine/kernels/philox.ts';
import { loadSimd, NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { analysisSchema, reviewSchema } from '../../shared-engine/protocol/review.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';
import { JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { choiceAt } from '../../shared-engine/rules/view/pending-decision.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';
import { studentPoint } from '../prove/statistics/student.ts';

const analyst = createAnalyst(houseCard(), await loadSimd());

describe('quantiles', () => {
  test('of the normal distribution are those of printed tables', () => {
    // Source: printed tables of the standard normal distribution.
    expect(normalQuantile(0.025)).toBeCloseTo(1.959964, 6);
    expect(normalQuantile(0.005)).toBeCloseTo(2.575829, 6);
    expect(normalQuantile(0.001)).toBeCloseTo(3.090232, 6);
    expect(normalQuantile(0.4)).toBeCloseTo(0.253347, 6);
  });

  test.each([0.025, 0.005, 0.001, 0.0001])(
    'of Student’s distribution are within 2 % of the exact ones for a tail of %d',
    (tail) => {
      for (const df of [7, 15, 31, 63, 479]) {
        const exact = studentPoint(2 * tail, df);
        expect(Math.abs(studentQuantile(tail, df) / exact - 1)).toBeLessThan(df < 15 ? 0.02 : 0.002);
      }
    },
  );
});

describe('an estimate', () => {
  const values = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8);

  test('without a control is the mean with Student’s interval', () => {
    const { value, halfWidth } = estimate({ values, controls: values }, null, 0.025);
    expect(value).toBe(4.5);
    // t(7) = 2.365, deviation √6.
    expect(halfWidth).toBeCloseTo((2.365 * Math.sqrt(6)) / Math.sqrt(8), 1);
  });

  test('is corrected by the luck that its control shows', () => {
    // The values are their control; other deals say that this sample was lucky by one.
    const known = Float64Array.from({ length: 80_000 }, (_, i) => 3.5 + (i % 2 === 0 ? 2.3 : -2.3));
    const { value, halfWidth } = estimate({ values, controls: values }, known, 0.025);
    expect(value).toBeCloseTo(3.5, 3);
    expect(halfWidth).toBeLessThan(0.1);
  });

  test('is not moved by a control that has nothing to do with it', () => {
    const rng = createRng(1, 1);
    const many = Float64Array.from({ length: 64 }, () => rng.uniform());
    const controls = Float64Array.from({ length: 64 }, () => rng.uniform());
    const known = Float64Array.from({ length: 64 }, () => rng.uniform());
    const [plain, helped] = [null, known].map((each) => estimate({ values: many, controls }, each, 0.025));
    expect(Math.abs(helped!.value - plain!.value)).toBeLessThan(plain!.halfWidth / 2);
  });
});

describe('a verdict', () => {
  const by = (value: number, halfWidth: number): Estimate => ({ value, halfWidth });

  it('says that a better choice exists only where the interval lies above the smallest loss', () => {
    expect(verdictOf([by(3, 1.9)])).toBe('better-exists');
    expect(verdictOf([by(3, 2)])).toBe('undecided');
    expect(verdictOf([by(-4, 1), by(3, 1.9)])).toBe('better-exists');
  });

  it('calls a choice as good where no alternative can be better by more than the smallest loss', () => {
    expect(verdictOf([by(0.2, 0.8), by(-3, 1)])).toBe('as-good');
    expect(verdictOf([])).toBe('as-good');
    expect(verdictOf([by(0.2, 0.81)])).toBe('undecided');
  });

  it('follows the smallest loss it is given', () => {
    expect(SMALL_LOSS).toBe(1);
    expect(verdictOf([by(3, 1.9)], 2)).toBe('undecided');
    expect(verdictOf([by(3, 1.9)], 5)).toBe('as-good');
  });
});

/** A game without tiles: alternative n ends at 20 + values[n], with luck of its own in every batch. */
function gameOf(values: readonly number[], firstBatches: number[] = []): DealSource {
  return {
    rollOut({ first, batches }, actions) {
      firstBatches.push(first);
      const means = new Float64Array(batches * actions.length * RESULT_WIDTH);
      for (let b = 0; b < batches; b++) {
        for (const [a, action] of actions.entries()) {
          const luck = createRng(7, (first + b) * 64 + action(0)[0]!).uniform() - 0.5;
          means[(b * actions.length + a) * RESULT_WIDTH] = 20 + values[action(0)[0]!]! + 6 * luck;
        }
      }
      return { batches, actions: actions.length, means };
    },
  };
}

function alternativesOf(count: number): readonly Alternative[] {
  return Array.from({ length: count }, (_, n) => ({
    tiles: [n],
    number: null,
    action: [n, -1, -1, 1],
    keptValue: -n,
  }));
}

/** What a task says of a game that gives nothing to anybody. */
const NO_RECEIVER = { seat: 0, receiver: null, averagePass: null };

function comparisonOf(values: readonly number[], played: number, firstBatches: number[] = []) {
  const alternatives = alternativesOf(values.length);
  const chosen = alternatives[played]!;
  const source = gameOf(values, firstBatches);
  const budget = { candidates: 20, rounds: [{ batches: 8, survivors: 5 }] };
  const screened = screen(source, 0, { alternatives, chosen }, budget);
  return compare(source, { ...NO_RECEIVER, screened, chosen, interimAnalyses: [32, 64, 128, 256] });
}

describe('a comparison', () => {
  const VALUES = [0, 1, 2, 8, 3, 2, 1, 0];

  it('finds the better choice and how much better it is', () => {
    const { verdict, bestAlternative } = comparisonOf(VALUES, 2);
    expect(verdict).toBe('better-exists');
    expect(bestAlternative!.alternative.tiles).toEqual([3]);
    expect(Math.abs(bestAlternative!.difference.value - 6)).toBeLessThan(
      2 * bestAlternative!.difference.halfWidth,
    );
  });

  it('finds nothing to say against the best', () => {
    const { chosen, verdict } = comparisonOf(VALUES, 3);
    expect(verdict).toBe('as-good');
    expect(chosen.amongBest).toBe(true);
    expect(chosen.difference).toEqual({ value: 0, halfWidth: 0 });
  });

  it('goes on while the answer is near the border, and stays undecided when the deals run out', () => {
    const { batches, verdict } = comparisonOf([0, SMALL_LOSS, 0, 0], 2);
    expect(verdict).toBe('undecided');
    expect(batches).toBe(256);
    expect(comparisonOf(VALUES, 0).batches).toBeLessThan(256);
  });

  it('never shows a number from the deals that chose the finalists', () => {
    const firstBatches: number[] = [];
    comparisonOf(VALUES, 5, firstBatches);
    expect(firstBatches[0]).toBe(0);
    expect(firstBatches.length).toBeGreaterThan(1);
    for (const first of firstBatches.slice(1)) expect(first).toBeGreaterThanOrEqual(0x1_0000);
  });

  it('keeps the choice made among the finalists, however bad', () => {
    const { finalists } = comparisonOf([9, 8, 7, 6, 5, 4, 3, -20], 7);
    expect(finalists.some(({ alternative }) => alternative.tiles[0] === 7)).toBe(true);
    expect(finalists.length).toBe(6);
  });
});

describe('the finalists of a screening', () => {
  function screened(values: readonly number[], survivors: number) {
    const alternatives = alternativesOf(values.length);
    const budget = { candidates: 40, rounds: [{ batches: 12, survivors }] };
    return screen(gameOf(values), 0, { alternatives, chosen: alternatives[0]! }, budget).finalists;
  }

  it('are as many as there is room for where all candidates are as good as the best', () => {
    expect(screened(new Array<number>(40).fill(0), 30).length).toBeGreaterThanOrEqual(25);
  });

  it('are few where one is far ahead, and never fewer than the smallest number of survivors', () => {
    const values = Array.from({ length: 40 }, (_, n) => (n === 20 ? 9 : n / 40));
    const finalists = screened(values, 30);
    expect(finalists[0]!.tiles).toEqual([20]);
    expect(finalists.length).toBe(9);
    expect(screened(values, 4).length).toBe(5);
  });
});

describe('the work of a comparison', () => {
  /** Batches where all are as good as each other but the choice made, which is worse by exactly the smallest loss. */
  function batchesAmong(others: number): number {
    const values = [0, ...new Array<number>(others).fill(SMALL_LOSS)];
    const finalists = alternativesOf(values.length);
    return compare(gameOf(values), {
      ...NO_RECEIVER,
      screened: { finalists, controls: [] },
      chosen: finalists[0]!,
      interimAnalyses: [64, 256, 1024],
    }).batches;
  }

  it('goes to the last interim analysis where few are left, and less far where many are as good as each other', () => {
    expect(batchesAmong(2)).toBe(1024);
    const batches = batchesAmong(59);
    expect(batches).toBeLessThan(1024);
    expect(batches * 60).toBeLessThan(12_000);
  });
});

describe('alternatives', () => {
  const [record] = records('race', 1);
  const [{ situation }] = offeredChoices(record!) as [ReturnType<typeof offeredChoices>[number]];

  test('C1 C2 are every legal pass once, as many as the generating function says', () => {
    for (const size of [0, 1, 2, 3]) {
      const passes = passesOf(situation, size, analyst.leaf);
      // Source: elementary combinatorics (coefficient of x^size in ∏(1 + x + … + x^c) without jokers).
      let coefficients = [1, 0, 0, 0];
      situation.rack.forEach((count, face) => {
        if (face === JOKER_INDEX) return;
        coefficients = coefficients.map((_, power) =>
          coefficients.slice(Math.max(0, power - count), power + 1).reduce((sum, each) => sum + each, 0),
        );
      });
      expect(passes.length).toBe(coefficients[size]);
      expect(new Set(passes.map(({ tiles }) => tiles.join())).size).toBe(passes.length);
      expect(passes.some(({ tiles }) => tiles.includes(JOKER_INDEX))).toBe(false);
    }
  });

  test('drawn at random come up equally often', () => {
    const few = alternativesOf(5);
    const mixture: DealAction = anyOf(few, 3);
    const counts = [0, 0, 0, 0, 0];
    for (let deal = 0; deal < 5000; deal++) counts[mixture(deal)[0]!]!++;
    // Five standard deviations of a binomial count.
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(5 * Math.sqrt(800));
  });
});

describe('a deep analysis', () => {
  const all = records('deeper', 2);

  it('is the same when the choice is offered and when the round is over', () => {
    let compared = 0;
    for (const record of all) {
      for (const [nth, { subject, offered }] of decisionsIn(record).entries()) {
        const step = record.steps.indexOf(offered.chosen);
        const before = { ...record, steps: record.steps.slice(0, step) };
        const { chosen } = offered;
        const by = 'player';
        const answered = offeredChoice(before, choiceAt(chosen, record.seat)!, by);
        const early = analyzeOffered(analyst, { offered: answered, subject }, { budget: GLANCE });
        expect(early).toEqual(analyzeDecision(analyst, record, nth, { budget: GLANCE }));
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(12);
  });

  it('is added to the review one choice at a time, and parses', () => {
    for (const record of all) {
      const first = reviewRound(record, houseKernel);
      let review = first;
      for (const nth of review.choices.keys()) {
        expect(review.choices[nth]!.analysis.depth).toBe('quick');
        const analysis = analyzeDecision(analyst, record, nth, { budget: GLANCE });
        expect(analysisSchema.parse(JSON.parse(JSON.stringify(analysis)))).toEqual(analysis);
        review = withDeepAnalysis(review, nth, analysis);
      }
      expect(reviewSchema.parse(JSON.parse(JSON.stringify(review)))).toEqual(review);
      expect(review.choices.map(({ loss, sentences }) => [loss, sentences])).toEqual(
        first.choices.map(({ loss, sentences }) => [loss, sentences]),
      );
    }
  });

  it('lists the best alternative at the loss that is told', () => {
    for (const record of all) {
      for (const [nth, { subject, offered }] of decisionsIn(record).entries()) {
        const analysis = analyzeDecision(analyst, record, nth, { budget: GLANCE });
        const { alternatives, averagePass, bestAlternative, finalists, giveaway, loss } = analysis;
        const played = finalists[analysis.played]!;
        expect(alternatives).toBe(finalists.length - 1);
        expect(loss).toEqual(bestAlternative === null ? null : finalists[bestAlternative]!.difference);
        expect(played.difference).toEqual({ value: 0, halfWidth: 0 });
        if (subject !== 'tiles' || offered.chosen.kind !== 'move') continue;
        expect(bagOf(played.tiles)).toEqual(bagOf(offered.chosen.gave));
        expect(giveaway).toEqual(played.giveaway);
        expect(averagePass).not.toBeNull();
      }
    }
  });

  it('finds a better choice for many of the passes that are drawn at random', () => {
    const careless = records('careless', 12).filter(({ seat }) => seat === 2);
    let told = 0;
    let passes = 0;
    for (const record of careless) {
      for (const { subject, offered } of decisionsIn(record)) {
        if (subject !== 'tiles') continue;
        passes++;
        if (analyze(analyst, offered, { subject, budget: SHALLOW_BUDGET })!.verdict === 'better-exists')
          told++;
      }
    }
    expect(passes).toBeGreaterThan(10);
    expect(told / passes).toBeGreaterThan(0.15);
  });

  it('has the same bytes where the host cannot run the SIMD module', () => {
    const withoutSimd = createAnalyst(houseCard(), NO_SIMD);
    const [record] = all;
    for (const nth of [1, 3]) {
      expect(analyzeDecision(withoutSimd, record!, nth, { budget: GLANCE })).toEqual(
        analyzeDecision(analyst, record!, nth, { budget: GLANCE }),
      );
    }
  });

  it('throws for a choice that the record does not have', () => {
    expect(() => analyzeDecision(analyst, all[0]!, 99, { budget: GLANCE })).toThrow('no choice number 99');
  });
});
