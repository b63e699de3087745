// Racks that fit a constraint: evenly drawn from a set small enough to write down, counted as published, fixed by a seed.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inARow, likeNumbers } from '../../shared-engine/drill/constraint.ts';
import type { Constraint } from '../../shared-engine/drill/format.ts';
import { wilson } from '../../shared-engine/drill/rarity.ts';
import { sampleRack, sampleRackWithRarity } from '../../shared-engine/drill/sampled.ts';
import { samplerFor } from '../../shared-engine/drill/sampler.ts';
import { shapesOf } from '../../shared-engine/drill/shapes.ts';
import { weightedDraw } from '../../shared-engine/drill/weighted.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { bagOf, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import {
  drawnRacks,
  evenness,
  everySmallRack,
  feasible,
  fitsByDefinition,
  SMALL_STOCK,
  smallDrawer,
} from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { CHI_SQUARE, chiSquare } from '../outside/distribution.ts';
import { binomials, racksWithLikeUpTo, racksWithRowUpTo } from '../outside/rack-kinds.ts';

const every = everySmallRack(5);
const facesIn = (key: string): Face[] => key.split(' ') as Face[];

describe('on a set of 36 tiles, every rack of 5 written down', () => {
  test.each<[string, Constraint]>([
    ['anything', {}],
    ['two jokers or flowers apart', { jokers: 1, flowers: 1 }],
    ['no pair', { pairs: 0 }],
    ['three in a row', { inARow: { from: 3 } }],
    ['three like numbers and a pair', { likeNumbers: { from: 3 }, pairs: 1 }],
    ['nearest to a section', { section: 'bookends', pairs: { from: 1 } }],
    ['tiles to go', { toGo: { to: 10 } }],
  ])('%s: no rack is favored (chi-square, one in a thousand)', (name, constraint) => {
    const due = new Map(
      [...every].filter(([key]) => fitsByDefinition(facesIn(key), constraint, houseKernel)),
    );
    const drawn = drawnRacks(smallDrawer(constraint, 5, houseKernel, `test ${name}`), 8_000);
    const { strangers, z } = evenness(due, drawn);
    expect(strangers).toBe(0);
    expect(Math.abs(z)).toBeLessThan(3.29);
  });

  test('the same chi-square test fails a draw that is even over faces instead of tiles', () => {
    const racks = [...every.keys()].map(facesIn);
    const random = stream('unfair', 'looks');
    const drawn = drawnRacks(() => racks[random.below(racks.length)]!, 8_000);
    expect(evenness(every, drawn).z).toBeGreaterThan(10);
  });

  test('a constraint is called impossible only if no rack fits it', () => {
    const amount = fc.option(
      fc.oneof(fc.integer({ min: 0, max: 5 }), fc.record({ from: fc.integer({ min: 0, max: 4 }) })),
      { nil: undefined },
    );
    const parts = ['jokers', 'flowers', 'pairs', 'pungs', 'kongs', 'inARow', 'likeNumbers'] as const;
    let refused = 0;
    fc.assert(
      fc.property(fc.tuple(...parts.map(() => amount)), (amounts) => {
        const constraint: Constraint = Object.fromEntries(
          parts.flatMap((part, n) => (amounts[n] === undefined ? [] : [[part, amounts[n]]])),
        );
        if (samplerFor(constraint, 5, houseKernel, SMALL_STOCK).ok) return;
        refused++;
        const fitting = [...every.keys()].find((key) =>
          fitsByDefinition(facesIn(key), constraint, houseKernel),
        );
        expect(fitting).toBeUndefined();
      }),
      { seed: 4, numRuns: 150 },
    );
    expect(refused).toBeGreaterThan(30);
  });
});

describe('counting racks', () => {
  test('the shapes of 13 and of 14 tiles hold every set of tiles once: C(152, 13) and C(152, 14)', () => {
    for (const size of [13, 14]) {
      const ways = shapesOf(size).reduce((sum, shape) => sum + shape.ways, 0n);
      expect(ways).toBe(binomials(152, size)[size]);
    }
  });

  test('jokers among 13 tiles have the published shares (hypergeometric; formula of Boost.Math’s test values)', () => {
    [0.480418287, 0.378511378, 0.119529909, 0.019624313].forEach((share, jokers) => {
      const { rarity } = told({ jokers });
      expect(rarity.share).toBeCloseTo(share, 9);
      expect([rarity.low, rarity.high]).toEqual([rarity.share, rarity.share]);
    });
  });

  test('the shares of constraints agree with generating functions', () => {
    const all = binomials(152, 13)[13]!;
    const known: readonly [Constraint, bigint][] = [
      [{ inARow: { from: 4 } }, all - racksWithRowUpTo(3, 13)],
      [{ inARow: { to: 2 } }, racksWithRowUpTo(2, 13)],
      [{ likeNumbers: { from: 5 } }, all - racksWithLikeUpTo(4, 13)],
      [{ likeNumbers: { to: 2 } }, racksWithLikeUpTo(2, 13)],
    ];
    for (const [constraint, racks] of known) {
      const { rarity } = told(constraint);
      const truth = Number(racks) / Number(all);
      // Twice the width of the 95 % interval on either side: four standard errors.
      const width = rarity.high - rarity.low;
      expect(Math.abs(rarity.share - truth)).toBeLessThan(width);
      expect(rarity.fitted).toBeGreaterThan(0);
    }
  });

  test('Wilson’s interval has the published values (statsmodels test results, R binom)', () => {
    const published: readonly [number, number, number, number][] = [
      [4, 20, 0.0806577, 0.4160174],
      [18, 20, 0.6989664, 0.9721335],
      [100, 200, 0.4313609, 0.5686391],
    ];
    for (const [hits, trials, low, high] of published) {
      expect(wilson(hits, trials).low).toBeCloseTo(low, 7);
      expect(wilson(hits, trials).high).toBeCloseTo(high, 7);
    }
    expect(wilson(0, 50).low).toBe(0);
    expect(wilson(50, 50).high).toBe(1);
  });

  test('rows and like numbers are counted by their definition', () => {
    const rack = (text: string) => bagOf(facesIn(text));
    expect(inARow(rack('bam-8 bam-9 crak-1 crak-2 crak-3 dot-5'))).toBe(3);
    expect(inARow(rack('bam-9 crak-1 crak-2 east'))).toBe(2);
    expect(inARow(rack('east white flower joker'))).toBe(0);
    expect(likeNumbers(rack('bam-3 bam-3 crak-3 dot-5 dot-5 dot-5'))).toBe(3);
    expect(likeNumbers(rack('bam-3 bam-3 bam-3 east'))).toBe(0);
    expect(likeNumbers(rack('bam-1 crak-1 dot-1 dot-1 bam-2 dot-2'))).toBe(4);
  });
});

describe('a draw with weights of any size', () => {
  test('follows the shares of the weights (chi-square, df 5, .01)', () => {
    const weights = [1n, 2n, 3n, 4n, 5n, 6n].map((weight) => weight * 10n ** 30n);
    const { draw } = weightedDraw(weights);
    const random = stream('weights', 'draw');
    const counts = weights.map(() => 0);
    for (let n = 0; n < 21_000; n++) counts[draw(random)]!++;
    expect(chiSquare(counts, [1000, 2000, 3000, 4000, 5000, 6000])).toBeLessThan(CHI_SQUARE[5]!.at01);
  });

  test('reads as many random words as it needs', () => {
    // The border between the two lies at 1/3 of the line: in hexadecimal 0.5555…, which no word ends.
    const { draw } = weightedDraw([1n, 2n]);
    const words = (...values: number[]) => ({ below: () => values.shift()! });
    expect(draw(words(0x55555554))).toBe(0);
    expect(draw(words(0x55555556))).toBe(1);
    expect(draw(words(0x55555555, 0x55555554))).toBe(0);
    expect(draw(words(0x55555555, 0x55555555, 0x55555555, 0x55555556))).toBe(1);
  });

  test('needs one random word where its end lies on a boundary', () => {
    const { draw } = weightedDraw([1n, 1n]);
    expect(draw({ below: () => 0x7fffffff })).toBe(0);
    let asked = 0;
    const place = draw({
      below: () => {
        asked++;
        return 0x80000000;
      },
    });
    expect([place, asked]).toEqual([1, 1]);
  });
});

describe('a rack of the whole set', () => {
  const CONSTRAINTS: readonly Constraint[] = [
    {},
    { jokers: 2, flowers: { from: 1, to: 2 } },
    { kongs: 2, pungs: 3 },
    { pairs: 0, inARow: { from: 4 }, likeNumbers: { from: 3 } },
    { toGo: { to: 5 } },
    { section: 'one-suit', toGo: { from: 6, to: 7 } },
  ];

  test.each(CONSTRAINTS.map((constraint) => [JSON.stringify(constraint), constraint] as const))(
    'fits %s',
    (_, constraint) => {
      for (const size of [13, 14]) {
        const drawn = sampleRack({ constraint, size, kernel: houseKernel }, 'fits');
        if (!drawn.ok) throw new Error(drawn.message);
        expect(sizeOf(drawn.rack)).toBe(size);
        expect(fitsByDefinition(facesOf(drawn.rack), constraint, houseKernel)).toBe(true);
      }
    },
  );

  test('is the same for one seed and another for another', () => {
    const constraint: Constraint = { pairs: { from: 2 }, inARow: { from: 4 } };
    const racks = ['a', 'a', 'b'].map((seed) =>
      JSON.stringify(sampleRack({ constraint, size: 13, kernel: houseKernel }, seed)),
    );
    expect(racks[1]).toBe(racks[0]);
    expect(racks[2]).not.toBe(racks[0]);
    expect(JSON.stringify(told(constraint))).toBe(JSON.stringify(told(constraint)));
  });

  test('holds each plain face equally often if it may have no pair (chi-square, df 33, .001)', () => {
    const sampler = feasible(samplerFor({ pairs: 0, jokers: 0, flowers: 0 }, 13, houseKernel));
    const random = stream('faces', 'no pair');
    const counts = new Array<number>(34).fill(0);
    for (let n = 0; n < 4_000; n++) {
      sampler.draw(random).forEach((count, face) => {
        if (face < 34) counts[face]! += count;
      });
    }
    // 13 of 34 faces at a time: each count varies by the factor 21/33 less than independent draws would.
    const even = new Array<number>(34).fill((4_000 * 13) / 34);
    expect(chiSquare(counts, even) / (21 / 33)).toBeLessThan(63.87);
  });
});

function told(constraint: Constraint) {
  const described = sampleRackWithRarity({ constraint, size: 13, kernel: houseKernel }, 'told');
  if (!described.ok) throw new Error(described.message);
  return described;
}
