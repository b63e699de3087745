// One state, one story: whatever analyses say and in whatever order they arrive, a review never contradicts itself.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import { withDeepAnalysis } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { analysisWith, askedAmong } from '../kit/made-up-analyses.ts';
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
/** Verdicts and losses among neighbors of three styles, or nothing where they were not asked for. */
const among = fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 1, max: 9_000 })), {
  minLength: 2,
  maxLength: 3,
});
const arrivals = fc
  .record({
    round: fc.constantFrom(...ROUNDS),
    values: fc.array(fc.tuple(numbers, among), { minLength: 12, maxLength: 12 }),
  })
  .chain(({ round, values }) =>
    fc.record({
      round: fc.constant(round),
      analyses: fc.constant(
        round.choices.map((choice, nth) => {
          const [found, others] = values[nth]!;
          return askedAmong(analysisWith(choice, found), others);
        }),
      ),
      order: fc.shuffledSubarray([...round.choices.keys()], { minLength: round.choices.length }),
    }),
  );

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
      fc.property(arrivals, ({ round, analyses, order }) => {
        for (const state of states(round, order, analyses)) expect(contradictionsIn(state)).toEqual([]);
      }),
      { seed: 1401, numRuns: 120 },
    );
  });

  test('what is told of a choice that was played on does not change any more, and the end is the same for every order', () => {
    fc.assert(
      fc.property(arrivals, ({ round, analyses, order }) => {
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
      fc.property(arrivals, ({ round, analyses, order }) => {
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
