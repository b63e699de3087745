// A review made step by step while the round goes on is the one that the whole record gives.
import { expect, it } from 'vitest';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { houseKernel, records } from '../kit/reviews.ts';

it('a review made step by step is the review of the whole record, byte for byte', () => {
  for (const record of records('step by step', 4)) {
    let review: Review | null = null;
    for (let over = 1; over <= record.steps.length; over++) {
      const sofar = { ...record, steps: record.steps.slice(0, over) };
      review = reviewRound(sofar, houseKernel, review);
    }
    expect(JSON.stringify(review)).toBe(JSON.stringify(reviewRound(record, houseKernel)));
  }
});

it('a review computes nothing again that an earlier review contains', () => {
  const [record] = records('asked once', 1);
  let asked = 0;
  const counting = {
    ...houseKernel,
    histogram: (...args: Parameters<typeof houseKernel.histogram>) => {
      asked++;
      return houseKernel.histogram(...args);
    },
  };
  const whole = reviewRound(record!, counting);
  const first = asked;
  asked = 0;
  reviewRound(record!, counting, whole);
  expect(first).toBeGreaterThan(1000);
  expect(asked).toBeLessThan(first / 100);
});
