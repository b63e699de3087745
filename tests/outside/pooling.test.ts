// Partial pooling against two published worked examples: one with groups of one variance, one with many variances.
import { describe, expect, it } from 'vitest';
import { partialPooling } from '../../shared-engine/practice/pooling.ts';

describe('groups of one variance', () => {
  // B. Efron and C. Morris, "Stein's Paradox in Statistics", Scientific American 236 (5), 1977: hits of eighteen players
  // in their first 45 times at bat. Published: the mean of all .265 and the factor .212.
  const hits = [18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7];
  const all = hits.reduce((sum, one) => sum + one, 0) / hits.length / 45;
  const groups = hits.map((one) => ({ mean: one / 45, variance: (all * (1 - all)) / 45 }));
  const pooled = partialPooling(groups);

  it('are drawn to their mean by the published factor', () => {
    expect(pooled.overall).toBeCloseTo(0.265, 3);
    for (const kept of pooled.kept) expect(kept).toBeCloseTo(0.212, 3);
    expect(pooled.means[0]!.value).toBeCloseTo(0.265 + 0.212 * (0.4 - 0.265), 3);
    expect(pooled.means.at(-1)!.value).toBeCloseTo(0.265 + 0.212 * (0.156 - 0.265), 3);
  });
});

describe('groups of many variances', () => {
  // Thirteen trials of a vaccine, treated and untreated, ill and well each (Colditz and others, JAMA 271, 1994), as the
  // data set dat.bcg of the R package metafor has them. Its random-effects model by DerSimonian and Laird gives 0.3088
  // between trials and −0.7141 with a standard error of 0.1787; counts and results were recalled from memory.
  const trials = [
    [4, 119, 11, 128],
    [6, 300, 29, 274],
    [3, 228, 11, 209],
    [62, 13536, 248, 12619],
    [33, 5036, 47, 5761],
    [180, 1361, 372, 1079],
    [8, 2537, 10, 619],
    [505, 87886, 499, 87892],
    [29, 7470, 45, 7232],
    [17, 1699, 65, 1600],
    [186, 50448, 141, 27197],
    [5, 2493, 3, 2338],
    [27, 16886, 29, 17825],
  ] as const;
  const groups = trials.map(([ill, well, untreatedIll, untreatedWell]) => ({
    mean: Math.log(ill / (ill + well) / (untreatedIll / (untreatedIll + untreatedWell))),
    variance: 1 / ill - 1 / (ill + well) + 1 / untreatedIll - 1 / (untreatedIll + untreatedWell),
  }));
  const pooled = partialPooling(groups);

  it('have the published variance between them and the published mean', () => {
    expect(pooled.between).toBeCloseTo(0.3088, 4);
    expect(pooled.overall).toBeCloseTo(-0.7141, 4);
  });

  it('keep more of their distance the more they rest on', () => {
    const order = groups.map((_, nth) => nth).toSorted((a, b) => groups[a]!.variance - groups[b]!.variance);
    const kept = order.map((nth) => pooled.kept[nth]!);
    expect(kept).toEqual(kept.toSorted((a, b) => b - a));
  });
});

it('groups that differ by no more than chance are drawn far to their mean, whatever their number', () => {
  for (const count of [1, 2, 3, 8]) {
    const groups = Array.from({ length: count }, (_, nth) => ({ mean: 1 + nth * 0.001, variance: 1 }));
    const { means } = partialPooling(groups);
    expect(
      Math.max(...means.map(({ value }) => value)) - Math.min(...means.map(({ value }) => value)),
    ).toBeLessThan(0.004);
    for (const { halfWidth } of means) expect(halfWidth).toBeGreaterThan(0);
  }
  expect(partialPooling([]).means).toEqual([]);
});
