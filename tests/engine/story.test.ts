// One state, one story: whatever analyses say and in whatever order they arrive, a review never contradicts itself.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { verdictOf } from '../../shared-engine/analysis/comparison/verdict.ts';
import type { DeepAnalysis, Finalist } from '../../shared-engine/analysis/review/analysis.ts';
import { withDeepAnalysis } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { ChoiceReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { contradictionsIn } from '../kit/story-contradictions.ts';

const ROUNDS = records('story', 8).map((record) => reviewRound(record, houseKernel));

/** Means and half widths, in thousandths, of as many alternatives as a choice has. */
const numbers = fc.array(
  fc.tuple(fc.integer({ min: -4_000, max: 9_000 }), fc.integer({ min: 1, max: 3_000 })),
  {
    minLength: 3,
    maxLength: 3,
  },
);
const arrivals = fc
  .record({ round: fc.constantFrom(...ROUNDS), values: fc.array(numbers, { minLength: 12, maxLength: 12 }) })
  .chain(({ round, values }) =>
    fc.record({
      round: fc.constant(round),
      values: fc.constant(values),
      order: fc.shuffledSubarray([...round.choices.keys()], { minLength: round.choices.length }),
    }),
  );

/** An analysis that obeys the rule of the verdicts, with these numbers. */
function analysisOf(choice: ChoiceReview, values: readonly (readonly [number, number])[]): DeepAnalysis {
  const others = alternativesTo(choice).slice(0, values.length);
  const finalists = [own(choice), ...others].map((one, place): Finalist => {
    const [value, halfWidth] = place === 0 ? [0, 0] : values[place - 1]!;
    return {
      ...one,
      winProbability: { value: 30, halfWidth: 1 },
      difference: { value: value / 1_000, halfWidth: halfWidth / 1_000 },
      giveaway: null,
      amongBest: true,
    };
  });
  const [, named = null] = finalists;
  const told = finalists.slice(1).map(({ difference }) => difference);
  const atMost = Math.max(0, ...told.map(({ value, halfWidth }) => value + halfWidth));
  const most = Math.max(...told.map(({ value }) => value));
  return {
    depth: 'deep',
    verdict: verdictOf({ named: named === null ? null : named.difference, most, atMost }),
    loss: named === null ? null : named.difference,
    atMost,
    giveaway: null,
    played: 0,
    bestAlternative: named === null ? null : 1,
    finalists,
    alternatives: others.length,
    typicalPass: null,
    sampledDeals: 640,
    smallLoss: 1,
    why: null,
    others: null,
  };
}

function own(choice: ChoiceReview): Pick<Finalist, 'tiles' | 'number'> {
  return choice.kind === 'pass'
    ? { tiles: choice.played.tiles, number: null }
    : { tiles: [], number: choice.played };
}

function alternativesTo(choice: ChoiceReview): readonly Pick<Finalist, 'tiles' | 'number'>[] {
  if (choice.kind === 'pass') {
    const { played } = choice;
    return choice.alternatives
      .filter(({ tiles }) => tiles.join() !== played.tiles.join())
      .map(({ tiles }) => ({ tiles, number: null }));
  }
  return choice.options
    .filter(({ value }) => value !== choice.played)
    .map(({ value }) => ({ tiles: [], number: value }));
}

/** The states of the review while the analyses arrive. */
function states(
  review: Review,
  order: readonly number[],
  analyses: readonly DeepAnalysis[],
): readonly Review[] {
  let now = review;
  return [now, ...order.map((nth) => (now = withDeepAnalysis(now, nth, analyses[nth]!)))];
}

describe('one state, one story', () => {
  test('no state contradicts itself, whatever was found and whichever analysis came first', () => {
    fc.assert(
      fc.property(arrivals, ({ round, values, order }) => {
        const analyses = round.choices.map((choice, nth) => analysisOf(choice, values[nth]!));
        for (const state of states(round, order, analyses)) expect(contradictionsIn(state)).toEqual([]);
      }),
      { seed: 1401, numRuns: 120 },
    );
  });

  test('what is told of a choice that was played on does not change any more, and the end is the same for every order', () => {
    fc.assert(
      fc.property(arrivals, ({ round, values, order }) => {
        const analyses = round.choices.map((choice, nth) => analysisOf(choice, values[nth]!));
        const told = states(round, order, analyses);
        const last = told.at(-1)!.story;
        for (const [arrived, state] of told.entries()) {
          for (const nth of order.slice(0, arrived)) {
            expect(state.story.choices[nth]).toEqual(last.choices[nth]);
          }
        }
        expect(states(round, order.toReversed(), analyses).at(-1)!.story).toEqual(last);
      }),
      { seed: 1402, numRuns: 40 },
    );
  });

  test('no sentence of a deep answer is longer than 25 words', () => {
    fc.assert(
      fc.property(arrivals, ({ round, values, order }) => {
        const analyses = round.choices.map((choice, nth) => analysisOf(choice, values[nth]!));
        const { headline, choices } = states(round, order, analyses).at(-1)!.story;
        for (const sentence of [...headline, ...choices.flatMap(({ sentences }) => sentences)]) {
          expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(25);
          expect(sentence).toMatch(/^[A-Z].*[^.]\.$/);
        }
      }),
      { seed: 1403, numRuns: 60 },
    );
  });
});
