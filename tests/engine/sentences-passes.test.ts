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

  test('says what stays open where nothing can be said', () => {
    const [value, halfWidth] = [-100, 1_400];
    const analysis = analysisWith(pass, Array(3).fill([value, halfWidth]));
    expect(analysis.verdict).toBe('cant-say');
    expect(deepVerdict({ ...pass, analysis }, analysis).slice(1)).toEqual([
      'That brought no more wins.',
      'One of the 3 others we compared may still be better, by up to 1.3 wins in 100 games.',
    ]);
  });
});

test('tiles that came back are named without how many, for of some the pass has fewer', () => {
  const returned: readonly Face[] = ['bam-9', 'south', 'south'];
  expect(returnedSentence({ ...pass, parts: { ...pass.parts, returned } })).toEqual([
    'You had passed 9 bam and the south wind before, and such tiles came back.',
  ]);
});

test('a section that goes out of reach a second time goes again', () => {
  const names = { stairs: 'Stairs', garden: 'Garden' };
  const losing = (...lost: readonly string[]) => ({
    ...pass,
    parts: { ...pass.parts, groupCount: 0 },
    sectionsInReach: lost,
    sectionsInReachAfter: [],
  });
  const told = (lost: readonly string[], before: readonly string[]) =>
    passFacts(losing(...lost), names, [losing(...before)])[0];
  expect(told(['stairs'], ['garden'])).toBe('This pass put Stairs out of reach.');
  expect(told(['stairs'], ['stairs'])).toBe('This pass put Stairs out of reach again.');
  expect(told(['stairs', 'garden'], ['stairs'])).toBe('This pass put Garden out of reach, and Stairs again.');
});
