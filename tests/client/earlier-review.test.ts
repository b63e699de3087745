// Two plays of one deal are set side by side, and a play that is opened again is no second one.
import { expect, it } from 'vitest';
import { openApp } from '../../client/app/app-state.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { houseKernel, records } from '../kit/reviews.ts';

it('a round opened from those of the past is not set beside itself, and a deal played again is set beside its first play', () => {
  const app = openApp({
    storage: memoryStorage(),
    place: () => ({ pathname: '/', hash: '', over: false }),
    origin: 'https://table.example',
    showPath() {},
    renamePath() {},
    goBack() {},
    onReturn: () => () => {},
    newSeed: () => '0'.repeat(64),
    random: { below: () => 0 },
  });
  const review = reviewRound(records('once', 1)[0]!, houseKernel);
  const before = (isPast: boolean) => app.reviewBefore('a deal', { room: {}, isPast, review });
  expect([before(false), before(true), before(false)]).toEqual([null, null, review]);
});
