// The comparison of alternatives: intervals that hold, verdicts that follow from them, fresh deals for what is shown.
import { describe, expect, it, test } from 'vitest';
import { offeredChoice, offeredChoices } from '../../shared-engine/analysis/belief/situation.ts';
import { passesOf, typicalPasses } from '../../shared-engine/analysis/comparison/alternatives.ts';
import { analyze, createAnalyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import { SHALLOW_BUDGET } from '../../shared-engine/analysis/comparison/budget.ts';
import { compare } from '../../shared-engine/analysis/comparison/comparison.ts';
import { type Estimate, estimate } from '../../shared-engine/analysis/comparison/estimate.ts';
import { normalQuantile, studentQuantile } from '../../shared-engine/analysis/comparison/quantiles.ts';
import { sampleSize } from '../../shared-engine/analysis/comparison/sample-size.ts';
import { costThroughReceiver } from '../../shared-engine/analysis/comparison/sampled-deals.ts';
import { screen } from '../../shared-engine/analysis/comparison/screen.ts';
import { SMALL_LOSS, verdictOf } from '../../shared-engine/analysis/comparison/verdict.ts';
import {
  analyzeDecision,
  analyzeOffered,
  decisionsIn,
  withDeepAnalysis,
} from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { loadSimd, NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { analysisSchema, reviewSchema } from '../../shared-engine/protocol/review.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';
import { JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { choiceAt } from '../../shared-engine/rules/view/pending-decision.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';
import { alternativesOf, gameOf, NO_RECEIVER } from '../prove/analysis/game-without-tiles.ts';
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

test('an estimate is the mean with Student’s interval', () => {
  const { value, halfWidth } = estimate(Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8), 0.025);
  expect(value).toBe(4.5);
  // t(7) = 2.365, deviation √6.
  expect(halfWidth).toBeCloseTo((2.365 * Math.sqrt(6)) / Math.sqrt(8), 1);
});

test('an alternative that the search has picked is told without the luck by which it was picked', () => {
  const alternatives = alternativesOf(40);
  let told = 0;
  for (let seed = 0; seed < 60; seed++) {
    const source = gameOf(new Array<number>(40).fill(0), { seed });
    const budget = { firstBatches: 2, candidates: 40, rounds: [{ batches: 8, survivors: 3 }] };
    const screened = screen(source, 0, { alternatives, chosen: alternatives[0]! }, budget);
    const fresh = { least: 32, most: 32 };
    const { bestAlternative } = compare(source, {
      ...NO_RECEIVER,
      screened,
      chosen: alternatives[0]!,
      fresh,
    });
    told += bestAlternative!.difference.value / 60;
  }
  // The standard error of a difference of two means of 32 batches is 0.43, of the mean of 60 of them 0.06.
  expect(Math.abs(told)).toBeLessThan(0.2);
});

describe('a verdict', () => {
  const by = (value: number, halfWidth: number): Estimate => ({ value, halfWidth });
  const said = (named: Estimate | null, most: number, atMost: number) => verdictOf({ named, most, atMost });

  it('is best where nothing is ahead and nothing can be by more than the smallest loss', () => {
    expect(said(null, 0, 0)).toBe('best');
    expect(said(by(-2, 1), 0, 1)).toBe('best');
    expect(said(by(-2, 1), 0.1, 1)).toBe('just-as-good');
    expect(said(by(0.5, 0.4), 0.5, 0.9)).toBe('just-as-good');
  });

  it('is costly only where the alternative spoken of is surely better by more than the smallest loss', () => {
    expect(said(by(3, 1.9), 3, 4.9)).toBe('costly');
    expect(said(by(3, 2), 3, 5)).toBe('a-little-worse');
    expect(said(by(0.9, 0.8), 5, 9)).toBe('a-little-worse');
  });

  it('says nothing where the alternative may be worse or better, and that it may matter', () => {
    expect(said(by(0.5, 0.6), 0.5, 1.1)).toBe('cant-say');
    expect(said(by(-1, 0.5), 3, 5)).toBe('cant-say');
  });

  it('follows the smallest loss it is given', () => {
    expect(SMALL_LOSS).toBe(1);
    const ahead = { named: by(3, 1.9), most: 3, atMost: 4.9 };
    expect(verdictOf(ahead, 2)).toBe('a-little-worse');
    expect(verdictOf(ahead, 5)).toBe('just-as-good');
  });
});

const TRIES = { least: 24, most: 240 };

function comparisonOf(values: readonly number[], played: number, firstBatches: number[] = []) {
  const alternatives = alternativesOf(values.length);
  const chosen = alternatives[played]!;
  const source = gameOf(values, { seed: 7, firstBatches });
  const budget = { firstBatches: 2, candidates: 20, rounds: [{ batches: 8, survivors: 5 }] };
  const screened = screen(source, 0, { alternatives, chosen }, budget);
  return compare(source, { ...NO_RECEIVER, screened, chosen, fresh: TRIES });
}

describe('a comparison', () => {
  const VALUES = [0, 1, 2, 8, 3, 2, 1, 0];

  it('finds the better choice and how much better it is', () => {
    const { verdict, bestAlternative } = comparisonOf(VALUES, 2);
    expect(verdict).toBe('costly');
    expect(bestAlternative!.alternative.tiles).toEqual([3]);
    const { value, halfWidth } = bestAlternative!.difference;
    expect(Math.abs(value - 6)).toBeLessThan(2 * halfWidth);
  });

  it('finds nothing to say against the best', () => {
    const { chosen, verdict, atMost } = comparisonOf(VALUES, 3);
    expect(verdict).toBe('best');
    expect(atMost).toBe(0);
    expect(chosen.amongBest).toBe(true);
    expect(chosen.difference).toEqual({ value: 0, halfWidth: 0 });
  });

  it('looks longer where the answer is near the border than where it is plain', () => {
    expect(comparisonOf(VALUES, 0).batches).toBe(TRIES.least);
    expect(comparisonOf([0, SMALL_LOSS, 0, 0], 2).batches).toBeGreaterThan(2 * TRIES.least);
  });

  it('never tells a number from the deals that chose the finalists', () => {
    const firstBatches: number[] = [];
    comparisonOf(VALUES, 5, firstBatches);
    expect(firstBatches.slice(0, 2)).toEqual([0, 2]);
    expect(firstBatches.length).toBeGreaterThan(3);
    for (const first of firstBatches.slice(2)) expect(first).toBeGreaterThanOrEqual(0x1_0000);
  });

  it('gives every alternative as many wins as the choice made and its difference together, also one that stopped early', () => {
    const { finalists, chosen } = comparisonOf([30, 31, 32, 38, 33, 32, 31, 30], 2);
    expect(finalists.length).toBeGreaterThan(2);
    for (const { winProbability, difference } of finalists)
      expect(winProbability.value).toBe(chosen.winProbability.value + difference.value);
  });

  it('keeps the choice made among the finalists, however bad', () => {
    const { finalists } = comparisonOf([9, 8, 7, 6, 5, 4, 3, -20], 7);
    expect(finalists.some(({ alternative }) => alternative.tiles[0] === 7)).toBe(true);
    expect(finalists.length).toBe(6);
  });
});

describe('a search', () => {
  function searched(values: readonly number[], survivors: number, candidates = 40) {
    const alternatives = alternativesOf(values.length);
    const budget = { firstBatches: 2, candidates, rounds: [{ batches: 12, survivors }] };
    const source = gameOf(values, { seed: 7 });
    return screen(source, 0, { alternatives, chosen: alternatives[0]! }, budget).finalists;
  }

  it('keeps as many as there is room for where all candidates are as good as the best', () => {
    expect(searched(new Array<number>(40).fill(0), 30).length).toBeGreaterThanOrEqual(25);
  });

  it('keeps few where one is far ahead', () => {
    const values = Array.from({ length: 40 }, (_, n) => (n === 20 ? 9 : n / 40));
    const finalists = searched(values, 30);
    expect(finalists[0]!.alternative.tiles).toEqual([20]);
    expect(finalists.length).toBe(5);
  });

  it('looks at every alternative before it leaves one out, whatever the order they come in', () => {
    const values = Array.from({ length: 120 }, (_, n) => (n === 119 ? 9 : 0));
    expect(searched(values, 5, 8)[0]!.alternative.tiles).toEqual([119]);
  });
});

describe('the size of a fresh sample', () => {
  const around = (mean: number, spread: number) =>
    Float64Array.from({ length: 40 }, (_, n) => mean + (n % 2 === 0 ? spread : -spread));

  it('is what makes the told difference narrow enough near the border, and less where the verdict is plain', () => {
    const { most } = { ...TRIES, most: 10_000 };
    const sizes = [1, 2, 3, 6, -3].map((mean) => sampleSize(around(mean, 3), { least: 1, most }));
    // 1.96 × 3.04 ÷ 0.5 is 11.9, and its square 142.
    expect(sizes[0]).toBe(142);
    expect(sizes).toEqual([142, 142, 53, 6, 8]);
  });

  it('stays between its bounds', () => {
    expect(sampleSize(around(40, 0.1), TRIES)).toBe(TRIES.least);
    expect(sampleSize(around(1, 30), TRIES)).toBe(TRIES.most);
  });
});

describe('the cost through the receiver', () => {
  it('is what the chooser would win more if the receiver had got what it gets otherwise, all else being as it is', () => {
    // Weights 3 2 1 1 and 1 for the wall; after the other action the receiver weighs 4, and all chances are as small.
    const values = Float64Array.of(
      ...[3, 2, 1, 1].map((weight) => (100 * weight) / 8),
      ...[5, 4, 1, 1].map((weight) => (100 * weight) / 12),
    );
    const results = {
      deals: 8,
      actions: 2,
      values: Float64Array.from({ length: 64 }, (_, i) => values[i % 8]!),
    };
    const [cost] = costThroughReceiver(results, [0, 1], { seat: 0, receiver: 1 });
    expect(cost).toBeCloseTo(100 * (3 / 10 - 3 / 8), 9);
    expect(costThroughReceiver(results, [0, 0], { seat: 0, receiver: 1 })[0]).toBeCloseTo(0, 9);
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

  test('what club players pass is legal, differs from deal to deal, and is mostly what their rack needs least', () => {
    const typical = typicalPasses(analyst.typical, situation, 3, 5);
    const passes = passesOf(situation, 3, analyst.leaf);
    const ranks = Array.from({ length: 200 }, (_, deal) => {
      const drawn = typical.of(deal);
      expect(typical.of(deal)).toEqual(drawn);
      return passes.findIndex(({ action }) => action.join() === drawn.join());
    });
    expect(Math.min(...ranks)).toBeGreaterThanOrEqual(0);
    expect(new Set(ranks).size).toBeGreaterThan(20);
    const mean = ranks.reduce((sum, rank) => sum + rank, 0) / ranks.length;
    expect(mean).toBeLessThan(passes.length / 3);
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
      expect(review.choices.map(({ analysis: _, ...found }) => found)).toEqual(
        first.choices.map(({ analysis: _, ...found }) => found),
      );
    }
  });

  it('lists the best alternative at the loss that is told', () => {
    for (const record of all) {
      for (const [nth, { subject, offered }] of decisionsIn(record).entries()) {
        const analysis = analyzeDecision(analyst, record, nth, { budget: GLANCE });
        const { alternatives, typicalPass, bestAlternative, finalists, giveaway, loss } = analysis;
        const played = finalists[analysis.played]!;
        expect(alternatives).toBe(finalists.length - 1);
        expect(loss).toEqual(bestAlternative === null ? null : finalists[bestAlternative]!.difference);
        expect(played.difference).toEqual({ value: 0, halfWidth: 0 });
        if (subject !== 'tiles' || offered.chosen.kind !== 'move') continue;
        expect(bagOf(played.tiles)).toEqual(bagOf(offered.chosen.gave));
        expect(giveaway).toEqual(played.giveaway);
        expect(typicalPass).not.toBeNull();
      }
    }
  });

  it('finds a better choice for many of the passes that are drawn at random', () => {
    const careless = records('careless', 8).filter(({ seat }) => seat === 2);
    const verdicts = careless.flatMap((record) =>
      decisionsIn(record)
        .filter(({ subject }) => subject === 'tiles')
        .map(
          ({ subject, offered }) => analyze(analyst, offered, { subject, budget: SHALLOW_BUDGET })!.verdict,
        ),
    );
    expect(verdicts.length).toBeGreaterThan(8);
    const told = verdicts.filter((verdict) => verdict === 'costly' || verdict === 'a-little-worse').length;
    expect(told / verdicts.length).toBeGreaterThan(0.4);
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
