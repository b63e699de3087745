// Names of tiles and of risky passes as a review says them, read from the sentences of passes written by hand.
import { describe, expect, test } from 'vitest';
import { riskSentence } from '../../shared-engine/analysis/review/sentences/risk.ts';
import { tileList } from '../../shared-engine/analysis/review/sentences/tiles.ts';
import { riskGrade } from '../../shared-engine/policy/pass-risk.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import { move, reviewOf, toldOf } from '../kit/reviews.ts';

/** What is said of a first pass of these tiles, with some others on the rack. */
function saidOf(gave: readonly [Face, Face, Face]): string {
  const others = FACES.filter((face) => face !== 'joker' && !gave.includes(face)).slice(0, 10);
  const review = reviewOf([...gave, ...others], [move('first-right', gave, FACES.slice(-5, -2))]);
  return toldOf(review);
}

describe('tiles by the names players say', () => {
  test.each<[Face, string]>([
    ['bam-3', '3 bam'],
    ['crak-1', '1 crak'],
    ['dot-9', '9 dot'],
    ['east', 'an east wind'],
    ['north', 'a north wind'],
    ['red', 'a red dragon'],
    ['green', 'a green dragon'],
    ['white', 'a soap'],
    ['flower', 'a flower'],
  ])('%s is said as %s', (face, name) => {
    const [first, second] = (['crak-5', 'dot-2', 'south'] as const).filter((other) => other !== face);
    expect(saidOf([face, first!, second!])).toContain(name);
  });

  test.each<[readonly [Face, Face, Face], string]>([
    [['bam-3', 'bam-3', 'east'], 'You passed an east wind and a pair of 3 bam to the right'],
    [['bam-3', 'bam-3', 'crak-6'], 'You passed 6 crak and a pair of 3 bam to the right'],
    [['red', 'red', 'red'], 'You passed a pung of red dragons to the right'],
    [['white', 'white', 'dot-1'], 'You passed 1 dot and a pair of soaps to the right'],
    [['dot-9', 'bam-1', 'flower'], 'You passed 1 bam, 9 dot and a flower to the right'],
  ])('%j is said as "%s"', (gave, sentence) => {
    expect(saidOf(gave)).toContain(sentence);
  });
});

test('a tile of which more are passed is another one, and one of several is one', () => {
  expect(tileList(['east', 'dot-9'], { faces: ['dot-9'], word: 'another' })).toBe(
    'another 9 dot and an east wind',
  );
  expect(tileList(['east'], { faces: ['east'], word: 'one' })).toBe('one east wind');
});

// The order and the kinds of risky passes are rules of thumb: common practice, no source.
const NO_PASS = { nearness: 0, toGo: 0 };

describe('the risk of a pass', () => {
  test.each<[string, readonly [Face, Face, Face], string]>([
    [
      'a pair',
      ['bam-3', 'bam-3', 'east'],
      'You gave a pair of 3 bam, by the rule of thumb the riskiest thing to pass.',
    ],
    [
      'a pung',
      ['bam-3', 'bam-3', 'bam-3'],
      'You gave a pung of 3 bam, by the rule of thumb riskier to pass even than a pair.',
    ],
    [
      'like numbers',
      ['bam-3', 'dot-3', 'east'],
      'You gave like numbers, 3 bam and 3 dot, by the rule of thumb nearly as risky to pass as a pair.',
    ],
    [
      'tiles of one suit',
      ['bam-3', 'bam-4', 'bam-5'],
      'You gave 3 bam, 4 bam and 5 bam, in a row; by the rule of thumb such tiles are not passed together.',
    ],
    [
      'odd tiles of one suit',
      ['bam-1', 'bam-5', 'bam-9'],
      'You gave 1 bam, 5 bam and 9 bam, all odd; by the rule of thumb such tiles are not passed together.',
    ],
    ['a flower', ['bam-3', 'east', 'flower'], 'You gave a flower; by the rule of thumb a flower is kept.'],
  ])('of %s is said, with its rule of thumb', (_, gave, phrase) => {
    expect(riskSentence({ ...NO_PASS, tiles: gave, risk: riskGrade(gave) }, 'you')).toBe(phrase);
  });

  test('of strays is not spoken of', () => {
    expect(riskSentence({ ...NO_PASS, tiles: ['bam-3', 'east', 'dot-9'], risk: 'none' }, 'you')).toBeNull();
    expect(saidOf(['bam-3', 'east', 'dot-9'])).not.toContain('rule of thumb');
  });
});
