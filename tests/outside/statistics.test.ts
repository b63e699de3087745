// The statistics that the proofs rest on, against published values.
import { describe, expect, test } from 'vitest';
import { bonferroni, expectedMaximum, holm } from '../prove/statistics/multiplicity.ts';
import { slopeOf } from '../prove/statistics/slope.ts';
import { pairedT, sampleOf, studentPoint, twoSided, welchT } from '../prove/statistics/student.ts';
import { NORMAL_POINT, wilson } from '../prove/statistics/wilson.ts';
import { LEW } from './lew.ts';

describe('Wilson’s interval', () => {
  // Source: test results of statsmodels, made with R's package binom.
  test.each([
    [4, 20, 0.0806577, 0.4160174],
    [18, 20, 0.6989664, 0.9721335],
    [100, 200, 0.4313609, 0.5686391],
  ])('is the published one for %i of %i', (hits, trials, low, high) => {
    const interval = wilson(hits, trials, NORMAL_POINT['95']);
    expect(interval.low).toBeCloseTo(low, 6);
    expect(interval.high).toBeCloseTo(high, 6);
  });
});

describe('Student’s t', () => {
  // Source: R documentation of t.test, data set sleep.
  const one = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
  const two = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

  test('gives the published paired test of the sleep data', () => {
    const { t, df, p } = pairedT(one, two);
    expect(t).toBeCloseTo(-4.0621, 4);
    expect(df).toBe(9);
    expect(p).toBeCloseTo(0.002833, 6);
  });

  test('gives the published Welch test of the sleep data', () => {
    const { t, df, p } = welchT(sampleOf(one), sampleOf(two));
    expect(t).toBeCloseTo(-1.8608, 4);
    expect(df).toBeCloseTo(17.776, 3);
    expect(p).toBeCloseTo(0.07939, 5);
  });

  test('gives the published Welch test from means and deviations', () => {
    // Source: NIST e-Handbook 1.3.5.3, as worked in the documentation of Boost.Math.
    const { t, df } = welchT(
      { n: 249, mean: 20.145, deviation: 6.4147 },
      { n: 79, mean: 30.481, deviation: 6.1077 },
    );
    expect(t).toBeCloseTo(-12.946, 3);
    expect(Math.abs(df - 136.87)).toBeLessThan(0.01);
  });

  test('has the printed two-sided points', () => {
    // Source: printed tables of t, two-sided; memory.
    expect(studentPoint(0.05, 10)).toBeCloseTo(2.228, 3);
    expect(studentPoint(0.01, 30)).toBeCloseTo(2.75, 3);
    expect(studentPoint(0.05, 1)).toBeCloseTo(12.706, 3);
    expect(twoSided(studentPoint(0.002, 7.5), 7.5)).toBeCloseTo(0.002, 10);
  });
});

test('Bonferroni and Holm adjust ten p-values as published', () => {
  // Source: test_multi.py of statsmodels, made with R's package multtest.
  const ps = [
    0.838541367553, 0.642193923795, 0.680845947633, 0.967833824309, 0.71626938238, 0.177096952723,
    5.23656777208e-5, 0.0202732688798, 0.00028140506198, 0.0149877310796,
  ];
  const byBonferroni = [
    1, 1, 1, 1, 1, 1, 5.23656777208e-4, 2.02732688798e-1, 2.8140506198e-3, 1.49877310796e-1,
  ];
  const byHolm = [1, 1, 1, 1, 1, 1, 5.23656777208e-4, 1.419128821586e-1, 2.53264555782e-3, 1.199018486368e-1];
  for (const [at, p] of bonferroni(ps).entries()) expect(p).toBeCloseTo(byBonferroni[at]!, 12);
  for (const [at, p] of holm(ps).entries()) expect(p).toBeCloseTo(byHolm[at]!, 12);
});

describe('mean and deviation', () => {
  // Source: NIST Statistical Reference Datasets, univariate.
  test('are the certified ones for NumAcc1', () => {
    expect(sampleOf([10_000_001, 10_000_003, 10_000_002])).toEqual({ n: 3, mean: 10_000_002, deviation: 1 });
  });

  test('are the certified ones for NumAcc4', () => {
    const values = [10_000_000.2, ...Array.from({ length: 500 }, () => [10_000_000.1, 10_000_000.3]).flat()];
    const { n, mean, deviation } = sampleOf(values);
    expect(n).toBe(1001);
    expect(mean).toBeCloseTo(10_000_000.2, 8);
    expect(deviation).toBeCloseTo(0.1, 8);
  });

  test('are the certified ones for Lew', () => {
    const { n, mean, deviation } = sampleOf(LEW);
    expect(n).toBe(200);
    expect(mean).toBeCloseTo(-177.435, 12);
    expect(deviation).toBeCloseTo(277.332168044316, 11);
  });
});

test('the best of three looks better than it is by .85 standard errors', () => {
  // Source: Smith & Winkler 2006, "The optimizer's curse", print .85; exact 3 ÷ (2√π) = .846284.
  expect(expectedMaximum(3)).toBeCloseTo(0.846284, 6);
  expect(expectedMaximum(3)).toBeCloseTo(1.5 / Math.sqrt(Math.PI), 9);
  expect(expectedMaximum(1)).toBeCloseTo(0, 12);
});

describe('the slope of a line', () => {
  // Source: Anscombe 1973, the first of the four sets; from memory.
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
  const single = x.map((value, n) => [{ x: value, y: y[n]! }]);

  test('is the published one', () => {
    expect(slopeOf(single).slope).toBeCloseTo(0.5001, 4);
  });

  test('is no surer for points that say the same again, where they are told to belong together', () => {
    const { halfWidth } = slopeOf(single);
    expect(slopeOf(single.map(([point]) => [point!, point!])).halfWidth).toBeCloseTo(halfWidth, 9);
    expect(slopeOf([...single, ...single]).halfWidth).toBeCloseTo(halfWidth / Math.sqrt(2), 9);
  });
});
