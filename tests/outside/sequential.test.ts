// Bounds for several looks at a growing sample, against the published ones of group-sequential designs.
import { describe, expect, test } from 'vitest';
import {
  crossingProbabilities,
  normalTail,
  spendingBounds,
  spentBy,
  spentEvenly,
} from '../../shared-engine/analysis/comparison/sequential.ts';

const LOOKS = [0.2, 0.4, 0.6, 0.8, 1];

function errorOf(bounds: readonly number[]): number {
  return crossingProbabilities(LOOKS, bounds).reduce((sum, crossed) => sum + crossed, 0);
}

describe('five equal looks, two-sided 5 %', () => {
  // Source: Jennison and Turnbull, Group Sequential Methods (2000), tables 2.1 and 2.3; from memory.
  test('err as often as Pocock’s constant bound is published to', () => {
    expect(errorOf(LOOKS.map(() => 2.413))).toBeCloseTo(0.05, 4);
  });

  test('err as often as the falling bounds of O’Brien and Fleming are published to', () => {
    expect(errorOf([4.562, 3.226, 2.634, 2.281, 2.04])).toBeCloseTo(0.05, 4);
  });

  test('have the published bounds where the error is spent as O’Brien and Fleming’s bounds do', () => {
    // Source: Lan and DeMets, Biometrika 70 (1983), as tables of the spending function print them; from memory.
    const published = [4.877, 3.357, 2.68, 2.29, 2.031];
    for (const [look, bound] of spendingBounds(LOOKS, 0.05).entries()) {
      expect(Math.abs(bound - published[look]!)).toBeLessThan(0.004);
    }
  });

  test('have the published bounds where as much error is spent early as late', () => {
    // Source: Kim and DeMets, Biometrika 74 (1987), the power family with the power 1 for five equal looks; from memory.
    const published = [2.576, 2.492, 2.411, 2.339, 2.276];
    for (const [look, bound] of spendingBounds(LOOKS, 0.05, spentEvenly).entries()) {
      expect(Math.abs(bound - published[look]!)).toBeLessThan(0.002);
    }
  });
});

test('one look has the ordinary bound, and the error is spent to the last', () => {
  expect(spendingBounds([1], 0.05)[0]).toBeCloseTo(1.959964, 4);
  expect(spentBy(1, 0.05)).toBeCloseTo(0.05, 6);
  expect(errorOf(spendingBounds(LOOKS, 0.05))).toBeCloseTo(0.05, 5);
});

test.each([
  [0, 0.5],
  [1, 0.158655254],
  [1.959964, 0.025],
  [2.5, 0.006209665],
  [3.090232, 0.001],
  [-1, 0.841344746],
] as const)('the upper tail of the normal distribution beyond %d is the printed one', (z, tail) => {
  // Source: printed tables of the standard normal distribution.
  expect(normalTail(z)).toBeCloseTo(tail, 8);
});
