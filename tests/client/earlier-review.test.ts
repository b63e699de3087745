// Two plays of one deal are set side by side, and a play that is opened again is no second one.
import { expect, it } from 'vitest';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { appAtFront } from '../kit/app-at-front.ts';
import { houseKernel, records } from '../kit/reviews.ts';

it('a round opened from those of the past is not set beside itself, and a deal played again is set beside its first play', () => {
  const app = appAtFront();
  const review = reviewRound(records('once', 1)[0]!, houseKernel);
  const before = (isPast: boolean) => app.reviewBefore('a deal', { room: {}, isPast, review });
  expect([before(false), before(true), before(false)]).toEqual([null, null, review]);
});
