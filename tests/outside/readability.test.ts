// How hard the sentences of reviews are to read, by a published formula in an implementation that is not ours.
import readability from 'text-readability';
import { expect, test } from 'vitest';
import { analyzeDecision, withDeepAnalysis } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { analystOf } from '../kit/analysts.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';

// Source: J. P. Kincaid and others, Derivation of new readability formulas for Navy enlisted personnel, 1975: the grade
// of a text by its words a sentence and its syllables a word; recalled from memory. Grade 8 is read at thirteen.
const GRADE = 8;
const SENTENCES = 500;
const DEEP_ROUNDS = 3;
/** The formula is of no use for a sentence of two or three words. */
const LEAST_WORDS = 5;

function told({ story: { headline, choices } }: Review): readonly string[] {
  return [...headline, ...choices.flatMap((choice) => choice.sentences)];
}

test('500 sentences of reviews are read at grade 8 or below, together and one by one', () => {
  const analyst = analystOf(houseCard());
  const sentences: string[] = [];
  for (const [round, record] of records('readable', 12).entries()) {
    let review = reviewRound(record, houseKernel);
    sentences.push(...told(review));
    // A few rounds show what deep answers say; they take longer than first answers.
    if (round >= DEEP_ROUNDS) continue;
    for (const nth of review.choices.keys()) {
      review = withDeepAnalysis(review, nth, analyzeDecision(analyst, record, nth, { budget: GLANCE }));
    }
    sentences.push(...told(review));
  }
  expect(sentences.length).toBeGreaterThanOrEqual(SENTENCES);
  const read = sentences.slice(0, SENTENCES);
  expect(readability.fleschKincaidGrade(read.join(' '))).toBeLessThanOrEqual(GRADE);
  for (const sentence of new Set(read)) {
    if (sentence.split(' ').length < LEAST_WORDS) continue;
    expect(readability.fleschKincaidGrade(sentence), sentence).toBeLessThanOrEqual(GRADE);
  }
  // The same formula tells when a text is hard.
  const hard =
    'Intersection–union hypotheses necessitate individually unadjusted confidence characterizations.';
  expect(readability.fleschKincaidGrade(hard)).toBeGreaterThan(GRADE);
});
