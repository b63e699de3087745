// Nearness, the logarithm below it, sections and gift grades.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { log2 } from '../../shared-engine/kernels/portable-math.ts';
import {
  nearestSections,
  sectionsInReach,
  toGoBySection,
} from '../../shared-engine/kernels/tiles-to-go/by-section.ts';
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

describe('the logarithm without the machine’s own', () => {
  it('agrees with Math.log2 within 1e-9 over all that a sum of targets can be', () => {
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
  it('of a single target is 14 minus its tiles to go', () => {
    for (let distance = 0; distance <= 14; distance++) {
      expect(nearnessOf(counts([distance, 1]), 0.25)).toBe(14 - distance);
    }
  });

  it('counts 1/w targets at one distance as much as one target a tile nearer', () => {
    expect(nearnessOf(counts([6, 4]), 0.25)).toBe(nearnessOf(counts([5, 1]), 0.25));
    expect(nearnessOf(counts([6, 2]), 0.5)).toBe(nearnessOf(counts([5, 1]), 0.5));
  });

  it('is the same to the last bit on every machine', () => {
    const histogram = counts([5, 3], [6, 17], [7, 110], [8, 400]);
    expect(nearnessOf(histogram, 0.05)).toBe(9.47705009253293);
    expect(nearnessOf(histogram, 0.3)).toBe(11.791072501860423);
  });

  it('of a card without targets is 0', () => {
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
  it('are as near as their nearest line, and open within one tile of the nearest section', () => {
    for (const rack of racks('sections', 200, 13)) {
      const byLine = kernel.toGoByPattern(rack);
      const expected = card.sections.map((_, section) =>
        Math.min(
          ...card.patterns.flatMap((line, index) => (line.section === section ? [byLine[index]!] : [])),
        ),
      );
      const least = kernel.toGo(rack);
      const within = (slack: number) =>
        card.sections.filter((_, section) => expected[section]! <= least + slack).map(({ id }) => id);
      expect([...toGoBySection(kernel, rack)]).toEqual(expected);
      expect(nearestSections(kernel, rack)).toEqual(within(0));
      expect(sectionsInReach(kernel, rack)).toEqual(within(1));
    }
  });
});

describe('gift grades follow the rules of thumb (common practice, no source)', () => {
  const cases: readonly (readonly [RiskGrade, readonly Face[]])[] = [
    ['pair', ['bam-3', 'bam-3', 'east']],
    ['pair', ['flower', 'bam-2', 'flower']],
    ['pair', ['red', 'red']],
    ['like-numbers', ['bam-3', 'dot-3', 'flower']],
    ['like-numbers', ['bam-7', 'crak-7', 'dot-7']],
    ['neighbours', ['crak-4', 'crak-6', 'crak-5']],
    ['neighbours', ['dot-9', 'dot-1', 'dot-5']],
    ['neighbours', ['bam-2', 'bam-8', 'bam-4']],
    ['flower', ['flower', 'bam-2', 'bam-3']],
    ['flower', ['flower']],
    ['nothing-special', ['bam-1', 'bam-2', 'bam-5']],
    ['nothing-special', ['bam-1', 'bam-2', 'crak-3']],
    ['nothing-special', ['bam-1', 'bam-3']],
    ['nothing-special', ['east', 'white', 'dot-9']],
    ['nothing-special', []],
  ];

  it.each(cases)('%s: %j', (grade, tiles) => {
    expect(riskGrade(tiles)).toBe(grade);
  });

  it('names the worst that holds, in whatever order the tiles come', () => {
    const order = ['nothing-special', 'flower', 'neighbours', 'like-numbers', 'pair'];
    expect(RISK_GRADES).toEqual(order);
    const random = stream('gifts', 'orders');
    for (let i = 0; i < 2000; i++) {
      const three = drawn(facesOf(FULL_SET), 3, random).filter((face) => face !== 'joker');
      expect(riskGrade(drawn(three, three.length, random))).toBe(riskGrade(three));
      // One more tile can only make a gift worse as long as two of a kind, of a number or a flower decide it.
      const pairOfThem = three.slice(0, 2);
      if (riskGrade(pairOfThem) !== 'nothing-special') {
        expect(order.indexOf(riskGrade(three))).toBeGreaterThanOrEqual(order.indexOf(riskGrade(pairOfThem)));
      }
    }
  });
});
