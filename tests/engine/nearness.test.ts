// Nearness, the logarithm it uses, sections and the risk of a pass.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { log2 } from '../../shared-engine/kernels/portable-math.ts';
import { sectionsInReach, toGoBySection } from '../../shared-engine/kernels/tiles-to-go/by-section.ts';
import { nearness, nearnessOf } from '../../shared-engine/kernels/tiles-to-go/nearness.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { RISK_GRADES, type RiskGrade, riskGrade } from '../../shared-engine/policy/pass-risk.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { addTo, type Bag, bagOf, FULL_SET, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import { randomCard } from '../kit/random-card.ts';

const card = randomCard('nearness', 30, 8);
const kernel = createSwarKernel(card);

function racks(name: string, count: number, size: number): Bag[] {
  const random = stream(name, 'racks');
  return Array.from({ length: count }, () => bagOf(drawn(facesOf(FULL_SET), size, random)));
}

function counts(...entries: readonly (readonly [distance: number, count: number])[]): Uint32Array {
  const histogram = new Uint32Array(15);
  for (const [distance, count] of entries) histogram[distance] = count;
  return histogram;
}

describe('the portable logarithm', () => {
  it('agrees with Math.log2 within 1e-9 for every sum of hands', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e7, noNaN: true }), (value) => {
        expect(Math.abs(log2(value) - Math.log2(value))).toBeLessThan(1e-9);
      }),
      { numRuns: 2000, seed: 2 },
    );
  });

  it('is exact at powers of two and rises between them', () => {
    for (let power = -60; power <= 60; power++) expect(log2(2 ** power)).toBe(power);
    for (let value = 1; value < 2000; value++) expect(log2(value + 1)).toBeGreaterThan(log2(value));
  });
});

describe('nearness', () => {
  it('of a single hand is 14 minus its tiles to go', () => {
    for (let distance = 0; distance <= 14; distance++) {
      expect(nearnessOf(counts([distance, 1]), 0.25)).toBe(14 - distance);
    }
  });

  it('counts 1/w hands at one distance as much as one hand a tile nearer', () => {
    expect(nearnessOf(counts([6, 4]), 0.25)).toBe(nearnessOf(counts([5, 1]), 0.25));
    expect(nearnessOf(counts([6, 2]), 0.5)).toBe(nearnessOf(counts([5, 1]), 0.5));
  });

  it('is the same to the last bit on every machine', () => {
    const histogram = counts([5, 3], [6, 17], [7, 110], [8, 400]);
    expect(nearnessOf(histogram, 0.05)).toBe(9.47705009253293);
    expect(nearnessOf(histogram, 0.3)).toBe(11.791072501860423);
  });

  it('of a card without hands is 0', () => {
    expect(nearnessOf(counts())).toBe(0);
  });

  it('never falls when a tile is added and never rises when one is taken away', () => {
    for (const rack of racks('monotone', 60, 13)) {
      const before = nearness(kernel, rack);
      for (const face of FACES) expect(nearness(kernel, addTo(rack, [face]))).toBeGreaterThanOrEqual(before);
      for (const face of facesOf(rack)) {
        expect(nearness(kernel, takeFrom(rack, [face]) ?? rack)).toBeLessThanOrEqual(before);
      }
    }
  });

  it('changes by at most one tile for a tile', () => {
    for (const rack of racks('one unit', 60, 13)) {
      const before = nearness(kernel, rack);
      for (const face of FACES) {
        expect(nearness(kernel, addTo(rack, [face])) - before).toBeLessThanOrEqual(1 + 1e-12);
      }
    }
  });
});

describe('sections', () => {
  it('are as near as their nearest pattern, and within reach at most one tile behind the nearest section', () => {
    for (const rack of racks('sections', 200, 13)) {
      const byPattern = kernel.toGoByPattern(rack);
      const expected = card.sections.map((_, section) =>
        Math.min(
          ...card.patterns.flatMap((pattern, index) =>
            pattern.section === section ? [byPattern[index]!] : [],
          ),
        ),
      );
      const least = kernel.toGo(rack);
      const within = card.sections.filter((_, section) => expected[section]! <= least + 1);
      expect([...toGoBySection(kernel, rack)]).toEqual(expected);
      expect(sectionsInReach(kernel, rack)).toEqual(within.map(({ id }) => id));
    }
  });
});

describe('the risk of a pass follows the rules of thumb (common practice, no source)', () => {
  const cases: readonly (readonly [RiskGrade, readonly Face[]])[] = [
    ['pair', ['bam-3', 'bam-3', 'east']],
    ['pair', ['flower', 'bam-2', 'flower']],
    ['pair', ['red', 'red']],
    ['like-numbers', ['bam-3', 'dot-3', 'flower']],
    ['like-numbers', ['bam-7', 'crak-7', 'dot-7']],
    ['same-suit', ['crak-4', 'crak-6', 'crak-5']],
    ['same-suit', ['dot-9', 'dot-1', 'dot-5']],
    ['same-suit', ['bam-2', 'bam-8', 'bam-4']],
    ['flower', ['flower', 'bam-2', 'bam-3']],
    ['flower', ['flower']],
    ['none', ['bam-1', 'bam-2', 'bam-5']],
    ['none', ['bam-1', 'bam-2', 'crak-3']],
    ['none', ['bam-1', 'bam-3']],
    ['none', ['east', 'white', 'dot-9']],
    ['none', []],
  ];

  it.each(cases)('is graded %s for %j', (grade, tiles) => {
    expect(riskGrade(tiles)).toBe(grade);
  });

  it('is the worst that holds, in whatever order the tiles come', () => {
    const order = ['none', 'flower', 'same-suit', 'like-numbers', 'pair'];
    expect(RISK_GRADES).toEqual(order);
    const random = stream('gifts', 'orders');
    for (let i = 0; i < 2000; i++) {
      const three = drawn(facesOf(FULL_SET), 3, random).filter((face) => face !== 'joker');
      expect(riskGrade(drawn(three, three.length, random))).toBe(riskGrade(three));
      // One more tile can only make a pass riskier as long as two of a kind, of a number or a flower decide it.
      const pairOfThem = three.slice(0, 2);
      if (riskGrade(pairOfThem) !== 'none') {
        expect(order.indexOf(riskGrade(three))).toBeGreaterThanOrEqual(order.indexOf(riskGrade(pairOfThem)));
      }
    }
  });
});
