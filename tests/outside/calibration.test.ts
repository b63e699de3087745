// The Brier score, by which the proof of calibration judges chances, against a published value.
import { expect, test } from 'vitest';
import { brier } from '../prove/statistics/brier.ts';

test('the Brier score of four predicted chances is the published one', () => {
  // Source: the example of scikit-learn's documentation of brier_score_loss (memory).
  expect(brier([0.1, 0.9, 0.8, 0.3], [0, 1, 1, 0])).toBeCloseTo(0.0375, 12);
});
