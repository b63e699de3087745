// The Brier score and the calibration slope, against published values and by construction.
import { describe, expect, test } from 'vitest';
import { brier, calibrationSlope, fitLogistic, logit } from '../../shared-engine/tools/win-model/logistic.ts';

test('the Brier score of four predicted chances is the published one', () => {
  // Source: the example of scikit-learn's documentation of brier_score_loss (memory).
  expect(brier([0.1, 0.9, 0.8, 0.3], [0, 1, 1, 0])).toBeCloseTo(0.0375, 12);
});

describe('logistic regression', () => {
  test('gives two groups their log odds and log odds ratio, with the textbook errors', () => {
    // Elementary: a saturated model of a 2 × 2 table; the variance of a log odds ratio is Σ 1 ÷ count.
    const { coefficients, errors } = fitLogistic({ rows: [[0], [1]], hits: [10, 30], trials: [40, 50] });
    expect(coefficients[0]).toBeCloseTo(Math.log(10 / 30), 9);
    expect(coefficients[1]).toBeCloseTo(Math.log(((30 / 20) * 30) / 10), 9);
    expect(errors[1]).toBeCloseTo(Math.sqrt(1 / 10 + 1 / 30 + 1 / 30 + 1 / 20), 9);
  });

  test('finds the slope 1 for honest chances and 1/2 for chances with twice the log odds', () => {
    const honest = [0.2, 0.4, 0.5, 0.75];
    const chances = honest.flatMap((chance) => new Array<number>(20).fill(chance));
    const hits = honest.flatMap((chance) => Array.from({ length: 20 }, (_, n) => (n < chance * 20 ? 1 : 0)));
    expect(calibrationSlope(chances, hits).slope).toBeCloseTo(1, 9);
    const bold = chances.map((chance) => 1 / (1 + Math.exp(-2 * logit(chance))));
    expect(calibrationSlope(bold, hits).slope).toBeCloseTo(0.5, 9);
  });
});
