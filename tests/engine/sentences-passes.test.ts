// What a review says of a pass beside another one: what changes, what goes blind all the same, what is told a second time.
import { describe, expect, test } from 'vitest';
import { deepVerdict } from '../../shared-engine/analysis/review/sentences/deep-verdict.ts';
import { insteadPhrase } from '../../shared-engine/analysis/review/sentences/instead.ts';
import { passFacts, returnedSentence } from '../../shared-engine/analysis/review/sentences/pass.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { analysisWith } from '../kit/made-up-analyses.ts';
import { move, passesOf, reviewOf } from '../kit/reviews.ts';

const START: readonly Face[] = [
  ...(['bam-1', 'bam-1', 'bam-5', 'crak-2', 'crak-7', 'crak-9', 'dot-3'] as const),
  ...(['dot-4', 'dot-8', 'east', 'north', 'north', 'flower'] as const),
];
const review = reviewOf(START, [
  move('first-left', ['crak-7', 'dot-8', 'north'], ['bam-2', 'dot-5', 'west']),
]);
const [pass] = passesOf(review) as [ReturnType<typeof passesOf>[number]];

/** What is told to do instead of passing `played`. */
function instead(played: readonly Face[], best: readonly Face[], blind = 0): string {
  const [own, other] = [played, best].map((tiles) => ({ ...pass.played, tiles }));
  return insteadPhrase({ ...pass, blind, played: own!, best: other! });
}

describe('what to do instead', () => {
  test('names what changes and what it changes with, and the whole pass where every tile does', () => {
    expect(instead(['crak-1', 'dot-1', 'west'], ['crak-1', 'dot-1', 'dot-7'])).toBe(
      'pass 7 dot instead of a west wind',
    );
    expect(instead(['crak-3', 'dot-5', 'dot-6'], ['bam-3', 'crak-9', 'dot-5'])).toBe(
      'pass 3 bam and 9 crak instead of 3 crak and 6 dot',
    );
    expect(instead(['crak-3', 'dot-5', 'dot-6'], ['bam-3', 'crak-9', 'east'])).toBe(
      'pass 3 bam, 9 crak and an east wind',
    );
  });

  test('says of a pass with blind tiles that they are passed all the same', () => {
    expect(instead(['dot-1'], ['red'], 2)).toBe('pass a red dragon instead, with the same 2 blind');
    expect(instead(['dot-1', 'east'], ['red', 'east'], 1)).toBe(
      'pass a red dragon instead of 1 dot, with the same 1 blind',
    );
  });
});

describe('the verdict in words', () => {
  /** One alternative is named; the others are far behind, except the last. */
  function said(named: readonly [number, number], last: readonly [number, number] = [-3_000, 100]) {
    const analysis = analysisWith(pass, [named, [-3_000, 100], last]);
    return { verdict: analysis.verdict, told: deepVerdict({ ...pass, analysis }, analysis).slice(-2) };
  }

  test('says how much better another choice may be at most, on one scale from just as good to can’t say', () => {
    expect(said([400, 500])).toEqual({
      verdict: 'just-as-good',
      told: ['None of the 3 others we compared is better by more than 1 win in 100 games.'],
    });
    expect(said([-100, 1_400])).toEqual({
      verdict: 'cant-say',
      told: [
        'We found nothing that is surely better.',
        'None of the 3 others we compared is better by more than 1.3 wins in 100 games.',
      ],
    });
    expect(said([600, 800]).told).toEqual([
      'That brought about 0.6 more wins in 100 games, which may be luck.',
      'None of the 3 others we compared is better by more than 1.4 wins in 100 games.',
    ]);
  });

  test('says of what is only a little better why it is neither just as good nor costly', () => {
    const little = (...values: Parameters<typeof said>): string => {
      const { verdict, told } = said(...values);
      expect(verdict).toBe('a-little-worse');
      return told.at(-1)!;
    };
    expect(little([700, 420])).toBe('That brings about 0.7 more wins in 100 games, perhaps up to 1.2.');
    expect(little([500, 300], [200, 1_250])).toBe(
      'That brings about 0.5 more wins in 100 games; another choice perhaps up to 1.5.',
    );
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
  });
});

test('tiles that came back are named without how many, for of some the pass has fewer', () => {
  const returned: readonly Face[] = ['bam-9', 'south', 'south'];
  expect(returnedSentence({ ...pass, parts: { ...pass.parts, returned } })).toEqual([
    'You had passed 9 bam and the south wind before, and such tiles came back.',
  ]);
});

test('sections that are farther away after a pass had a use for something in it', () => {
  const names = { stairs: 'Stairs', garden: 'Garden', winds: 'Two winds', suit: 'One suit' };
  const told = (before: readonly string[], after: readonly string[]) =>
    passFacts(
      {
        ...pass,
        parts: { ...pass.parts, groupCount: 0 },
        sectionsInReach: before,
        sectionsInReachAfter: after,
      },
      names,
    );
  const four = Object.keys(names);
  const gave = 'This pass gave something that';
  expect(told(['stairs', 'garden'], ['garden'])).toEqual([`${gave} your closest hands in Stairs use.`]);
  expect(told(four, ['stairs', 'suit'])).toEqual([`${gave} your closest hands in Garden and Two winds use.`]);
  expect(told(four, ['suit'])).toEqual([`${gave} hands in 3 of the 4 sections closest to your rack use.`]);
  expect(told(four, [])).toEqual([`${gave} hands in all 4 sections closest to your rack use.`]);
  expect(told(four, four)).toEqual([]);
});

test('a pair that is given whole is not told twice, one that is broken up is', () => {
  const { parts, played } = pass;
  const facts = (tiles: readonly Face[], risk: typeof played.risk) =>
    passFacts(
      {
        ...pass,
        sectionsInReachAfter: pass.sectionsInReach,
        played: { ...played, tiles, risk },
        parts: { ...parts, broken: parts.groups.filter(({ face }) => tiles.includes(face)) },
      },
      {},
    );
  expect(facts(['north', 'north', 'crak-2'], 'pair')).toEqual([
    'By the rule of thumb a pair is the riskiest thing to pass.',
  ]);
  expect(facts(['north', 'crak-7', 'crak-2'], 'none')).toEqual(['You broke up your pair of north winds.']);
});
