// The verdict on a pass in words: how much better another one is, or may be, and how sure that is.
import { describe, expect, test } from 'vitest';
import { anotherSentence, deepVerdict } from '../../shared-engine/analysis/review/sentences/deep-verdict.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { analysisWith, askedAmong } from '../kit/made-up-analyses.ts';
import { move, passesOf, reviewOf } from '../kit/reviews.ts';

const START: readonly Face[] = [
  ...(['bam-1', 'bam-1', 'bam-5', 'crak-2', 'crak-7', 'crak-9', 'dot-3'] as const),
  ...(['dot-4', 'dot-8', 'east', 'north', 'north', 'flower'] as const),
];
const [pass] = passesOf(
  reviewOf(START, [move('first-left', ['crak-7', 'dot-8', 'north'], ['bam-2', 'dot-5', 'west'])]),
) as [ReturnType<typeof passesOf>[number]];

describe('the verdict in words', () => {
  /** One alternative is named; the others are far behind, except the last. */
  function said(named: readonly [number, number], last: readonly [number, number] = [-3_000, 100]) {
    const analysis = analysisWith(pass, [named, [-3_000, 100], last]);
    return { verdict: analysis.verdict, told: deepVerdict({ ...pass, analysis }, analysis).slice(-2) };
  }

  test('says how much better another choice may be at most, on one scale from just as good to can’t say', () => {
    expect(said([400, 500])).toEqual({
      verdict: 'just-as-good',
      told: ['None of the 3 other choices we compared is better by more than 1 win in 100 games.'],
    });
    expect(said([-100, 1_400])).toEqual({
      verdict: 'cant-say',
      told: [
        'We found nothing that is surely better.',
        'One of the 3 other choices we compared may be better, but hardly by more than 1.3 wins in 100 games.',
      ],
    });
    expect(said([600, 800]).told).toEqual([
      'That brought about 0.6 more wins in 100 games, which may be chance.',
      'The true gain may be larger, but hardly more than 1.4 wins with any of the 3 other choices we compared.',
    ]);
  });

  test('says of what is costly among nobody that it may be less, and that it is unsure where nothing is sure', () => {
    const milder = (...verdicts: readonly number[]) => {
      const among = verdicts.map((verdict) => [verdict, 500] as const);
      const analysis = askedAmong(analysisWith(pass, [[1_600, 500]]), among);
      return deepVerdict({ ...pass, analysis }, analysis).slice(0, 2);
    };
    const brings = 'That brings about 1.6 more wins in 100 games';
    const [best, same, little, costly] = [0, 1, 2, 3];
    expect(milder(costly, best, best)[1]).toBe(`${brings}, most likely more than 1.`);
    const atLeast = expect.stringMatching(/^At least a little better: pass /);
    expect(milder(little, same, same)).toEqual([
      expect.stringMatching(/^Probably better: pass /),
      `${brings}, but perhaps hardly any.`,
    ]);
    expect(milder(little, little, little)).toEqual([atLeast, `${brings}, but perhaps no more than 1.`]);
    expect(milder(best, same, same)).toEqual([
      expect.stringMatching(/^Perhaps better: pass /),
      'That brought about 1.6 more wins in 100 games.',
    ]);
  });

  test('says of what is only a little better why it is neither just as good nor costly', () => {
    const little = (...values: Parameters<typeof said>): string => {
      const { verdict, told } = said(...values);
      expect(verdict).toBe('a-little-worse');
      return told.at(-1)!;
    };
    expect(little([700, 420])).toBe('That brings about 0.7 more wins in 100 games, perhaps up to 1.2.');
    // It takes another choice to bring more: that one is named.
    expect(little([500, 300], [200, 1_250])).toBe('That brings about 0.5 more wins in 100 games.');
    const another = (...values: readonly [number, number][]) => {
      const analysis = analysisWith(pass, values);
      return anotherSentence({ ...pass, analysis }, analysis);
    };
    expect(another([500, 300], [200, 1_250])).toEqual([
      expect.stringMatching(/^We know less of another choice: pass .+\.$/),
      'It may bring up to 1.5 more wins in 100 games.',
    ]);
    expect(another([500, 300], [900, 300])).toEqual([
      expect.stringMatching(/^Another choice did about as well: pass .+\.$/),
      'It may bring up to 1.2 more wins in 100 games.',
    ]);
    expect(another([700, 420], [900, 500])).toEqual([]);
    // More than a little, but perhaps only that.
    const start = (...values: Parameters<typeof said>) => said(...values).told[0]!.split(':')[0];
    expect([start([700, 420]), start([1_040, 500])]).toEqual(['A little better', 'A little better']);
    // Beside a larger number "a little" would read as an error.
    expect(start([1_500, 1_450])).toBe('Probably better');
    expect([start([1_100, 500]), start([2_400, 1_450])]).toEqual([
      'At least a little better',
      'At least a little better',
    ]);
    expect(little([2_400, 1_450])).toBe(
      'That brings about 2.4 more wins in 100 games, but perhaps only 0.9.',
    );
    expect(little([1_500, 1_450])).toBe(
      'That brings about 1.5 more wins in 100 games, but perhaps hardly any.',
    );
    expect(said([3_000, 1_000])).toEqual({
      verdict: 'costly',
      told: [expect.stringMatching(/^Better: /), 'That brings about 3 more wins in 100 games.'],
    });
    // The same number may be told of what is only a little better.
    expect(said([1_500, 400])).toEqual({
      verdict: 'costly',
      told: [
        expect.stringMatching(/^Better: /),
        'That brings about 1.5 more wins in 100 games, most likely more than 1.',
      ],
    });
  });
});
