// The deal against the hypergeometric distribution, and the shuffle against a shuffle known to be unfair.
import { describe, expect, test } from 'vitest';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { type Random, shuffled, stream } from '../../shared-engine/rules/deal/random.ts';
import { JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { seedNamed } from '../kit/rounds.ts';
import { CHI_SQUARE, chiSquare, hypergeometric } from './distribution.ts';

describe('the hypergeometric formula', () => {
  // Source: Boost.Math test_hypergeometric_dist.cpp, as (k, n, r, N).
  test.each([
    [20, 200, 50, 500, 0.120748236361163],
    [1, 13, 4, 26, 0.248695652173913],
    [40, 70, 89, 170, 0.0721901023798991],
  ])('P(%i of %i; %i in %i) is the published %d', (k, n, r, N, published) => {
    expect(hypergeometric(k, n, r, N)).toBeCloseTo(published, 14);
  });

  test('gives the published shares of jokers among 13 of 152 tiles', () => {
    const published = [0.480418287, 0.378511378, 0.119529909, 0.019624313];
    published.forEach((share, k) => {
      expect(hypergeometric(k, 13, 8, 152)).toBeCloseTo(share, 9);
    });
  });
});

describe('the deal', () => {
  test('D1 jokers on 100,000 dealt racks follow the hypergeometric distribution (chi-square, df 5, .01)', () => {
    const racks = 100_000;
    const counts = [0, 0, 0, 0, 0, 0];
    for (let n = 0; n < racks; n++) {
      // One rack of each deal: the four racks of one deal are not independent.
      const { racks: dealt } = dealTiles({ seed: seedNamed(`jokers ${n}`), dealer: 1 });
      counts[Math.min(5, dealt[0][JOKER_INDEX]!)]!++;
    }
    const shares = [0, 1, 2, 3, 4].map((k) => hypergeometric(k, 13, 8, 152));
    const expected = [...shares, 1 - shares.reduce((a, b) => a + b)].map((share) => share * racks);
    expect(chiSquare(counts, expected)).toBeLessThan(CHI_SQUARE[5]!.at01);
  });

  test('D1 each face is as likely on the first rack as on the last tile of the wall', () => {
    const deals = 20_000;
    let onRack = 0;
    let atEnd = 0;
    for (let n = 0; n < deals; n++) {
      const { racks, wall } = dealTiles({ seed: seedNamed(`places ${n}`), dealer: 0 });
      onRack += racks[1][0]!;
      if (wall.at(-1) === 'bam-1') atEnd++;
    }
    // 4 bam-1 in 152: 13 places of the rack, one of the wall; each count within 4 standard deviations.
    const share = 4 / 152;
    expect(Math.abs(onRack - deals * 13 * share)).toBeLessThan(4 * Math.sqrt(deals * 13 * share));
    expect(Math.abs(atEnd - deals * share)).toBeLessThan(4 * Math.sqrt(deals * share));
  });
});

/** The unfair shuffle of the textbooks: every place is swapped with any place. */
function naive<T>(items: readonly T[], random: Random): T[] {
  const result = [...items];
  for (let i = 0; i < result.length; i++) {
    const other = random.below(result.length);
    [result[i], result[other]] = [result[other]!, result[i]!];
  }
  return result;
}

/** How often each of the 24 orders of four items comes up. */
function orders(shuffle: typeof shuffled, runs: number): number[] {
  const random = stream('orders', 'shuffle test');
  const counts = new Map<string, number>();
  for (let n = 0; n < runs; n++) {
    const order = shuffle([1, 2, 3, 4], random).join('');
    counts.set(order, (counts.get(order) ?? 0) + 1);
  }
  return [...counts.values(), ...new Array<number>(24 - counts.size).fill(0)];
}

describe('the shuffle', () => {
  const runs = 48_000;
  const even = new Array<number>(24).fill(runs / 24);

  test('D1 Fisher–Yates gives the 24 orders of four items equally often (Knuth, TAOCP 2, algorithm P; df 23, .01)', () => {
    expect(chiSquare(orders(shuffled, runs), even)).toBeLessThan(CHI_SQUARE[23]!.at01);
  });

  test('D1 the same test fails the naive swap', () => {
    expect(chiSquare(orders(naive, runs), even)).toBeGreaterThan(CHI_SQUARE[23]!.at01);
  });

  test('the naive swap of three items gives each order in 4 or 5 of 27 cases, counted in full (Knuth)', () => {
    const counts = new Map<string, number>();
    for (let n = 0; n < 27; n++) {
      const draws = [n % 3, Math.floor(n / 3) % 3, Math.floor(n / 9)];
      const order = naive([1, 2, 3], { below: () => draws.shift()! }).join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect([...counts.values()].sort()).toEqual([4, 4, 4, 5, 5, 5]);
  });

  test('the naive swap puts item 1, 2, 3, 4 of four first in 25, 29.30, 24.61, 21.09 % (GNU make commit 9251546b prints 25.00 29.30 24.60 21.10)', () => {
    const first = [0, 0, 0, 0];
    for (let n = 0; n < 256; n++) {
      const draws = [n % 4, Math.floor(n / 4) % 4, Math.floor(n / 16) % 4, Math.floor(n / 64)];
      first[naive([0, 1, 2, 3], { below: () => draws.shift()! })[0]!]!++;
    }
    expect(first.map((count) => (count / 256) * 100)).toEqual([25, 29.296875, 24.609375, 21.09375]);
  });
});
