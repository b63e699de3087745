// Cards with one problem each, and what the parser says about them.
import type { CardProblemCode } from '../../shared-engine/card/problem.ts';
import { cardOf, GOOD_PATTERN, patternOf } from './card-files.ts';

interface BadCard {
  readonly title: string;
  readonly json: unknown;
  readonly code: CardProblemCode;
  readonly pattern: string | null;
  readonly group: number | null;
  readonly says: string;
}

const wind = (size: number, name: string) => ({ size, tile: { wind: { var: name } } });
const deep = Array.from({ length: 40 }).reduce<unknown>((inner) => [inner], 0);

export const BAD_CARDS: readonly BadCard[] = [
  {
    title: 'a pattern of 13 tiles',
    json: cardOf(
      patternOf(GOOD_PATTERN.groups.map((group) => (group.size === 5 ? { ...group, size: 4 } : group))),
    ),
    code: 'not-14-tiles',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": its groups hold 13 tiles and a pattern needs 14; add 1.',
  },
  {
    title: 'a pattern of 16 tiles',
    json: cardOf(patternOf([...GOOD_PATTERN.groups, { size: 2, tile: { zero: true } }])),
    code: 'not-14-tiles',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": its groups hold 16 tiles and a pattern needs 14; take 2 away.',
  },
  {
    title: 'a section the card does not have',
    json: cardOf({ ...GOOD_PATTERN, section: 'second' }),
    code: 'unknown-section',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": the card has no section "second"; add it to "sections" or correct it.',
  },
  {
    title: 'two patterns of one id',
    json: cardOf(GOOD_PATTERN, GOOD_PATTERN),
    code: 'duplicate-id',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": two patterns have this id; rename one.',
  },
  {
    title: 'two sections of one id',
    json: {
      ...cardOf(GOOD_PATTERN),
      sections: [
        { id: 'first', name: 'A' },
        { id: 'first', name: 'B' },
      ],
    },
    code: 'duplicate-id',
    pattern: null,
    group: null,
    says: 'Card: two sections are called "first"; rename one.',
  },
  {
    title: 'a number beyond nine under one of its choices',
    json: cardOf({ ...GOOD_PATTERN, where: { n: { from: 3, to: 8 } } }),
    code: 'number-out-of-range',
    pattern: 'plain',
    group: 2,
    says: 'Pattern "plain", group 2: its number is 10 when "n" is 8; narrow "where" so that it stays within 1 to 9.',
  },
  {
    title: 'one variable for a number and a suit',
    json: cardOf(
      patternOf([
        { size: 5, tile: { number: { var: 'p' }, suit: { var: 'p' } } },
        { size: 5, tile: { wind: 'east' } },
        { size: 4, tile: { wind: 'west' } },
      ]),
    ),
    code: 'variable-mixed',
    pattern: 'plain',
    group: 1,
    says: 'Pattern "plain", group 1: "p" is a suit here and a number in group 1; use two names.',
  },
  {
    title: '"where" for a variable that no group uses',
    json: cardOf({ ...GOOD_PATTERN, where: { z: { suits: ['bam'] } } }),
    code: 'variable-unused',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": "where" speaks of "z", which no group uses; remove it.',
  },
  {
    title: 'more variables of one kind than there can be',
    json: cardOf(patternOf([wind(3, 'a'), wind(3, 'b'), wind(3, 'c'), wind(3, 'd'), wind(2, 'e')])),
    code: 'too-many-variables',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": it has 5 wind variables; at most 4 are allowed.',
  },
  {
    title: 'numbers for a suit variable',
    json: cardOf({ ...GOOD_PATTERN, where: { p: { numbers: [1, 2] } } }),
    code: 'wrong-where',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": "p" is a suit; give it "suits".',
  },
  {
    title: 'a range that runs backwards',
    json: cardOf({ ...GOOD_PATTERN, where: { n: { from: 5, to: 2 } } }),
    code: 'wrong-where',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": "n" goes from 5 to 2; swap them.',
  },
  {
    title: 'a year digit on a card without a year',
    json: cardOf(
      patternOf([
        { size: 5, tile: { wind: 'north' } },
        { size: 5, tile: { yearDigit: 0, suit: 'bam' } },
        { size: 4, tile: { zero: true } },
      ]),
    ),
    code: 'no-year',
    pattern: 'plain',
    group: 2,
    says: 'Pattern "plain", group 2: it uses a year digit; give the card a "year" in "parameters".',
  },
  {
    title: 'two suits that "where" leaves no room for',
    json: cardOf({ ...GOOD_PATTERN, where: { p: { suits: ['dot'] }, q: { suits: ['dot'] } } }),
    code: 'no-choice',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": no choice of numbers, suits, dragons and winds fits it; two variables of one kind never take the same value, so widen "where" or use fewer.',
  },
  {
    title: 'more of a face in singles and pairs than the set has',
    json: cardOf(
      patternOf([
        { size: 6, tile: { flower: true } },
        { size: 3, tile: { wind: 'west' } },
        { size: 2, tile: { zero: true } },
        { size: 1, tile: { dragon: 'white' } },
        { size: 2, tile: { dragon: { var: 'x' } } },
      ]),
    ),
    code: 'too-few-copies',
    pattern: 'plain',
    group: 5,
    says: 'Pattern "plain", group 5: singles and pairs of this pattern want 5 × white (x = white), the set has 4 and no joker may stand there; want fewer or rule this choice out with "where".',
  },
  {
    title: 'a pattern that nine jokers would have to fill',
    json: cardOf(
      patternOf([
        { size: 6, tile: { wind: 'south' } },
        { size: 6, tile: { wind: 'south' } },
        { size: 1, tile: { wind: 'south' } },
        { size: 1, tile: { flower: true } },
      ]),
    ),
    code: 'too-many-jokers',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": it cannot do without 9 jokers, and the set has 8; spread its groups over more faces.',
  },
  {
    title: 'a card of more hands than a table can search',
    json: cardOf(...Array.from({ length: 7 }, (_, index) => widePattern(index))),
    code: 'too-many-hands',
    pattern: 'wide-7',
    group: null,
    says: 'Pattern "wide-7": with it the card comes to more than 20000 hands; fix some of its variables with "where".',
  },
  {
    title: 'a group of seven',
    json: cardOf(patternOf([{ ...GOOD_PATTERN.groups[0]!, size: 7 }])),
    code: 'not-in-format',
    pattern: 'plain',
    group: 1,
    says: 'Pattern "plain", group 1: "size" must be a whole number from 1 to 6.',
  },
  {
    title: 'a wind that does not blow',
    json: cardOf({ ...GOOD_PATTERN, groups: [GOOD_PATTERN.groups[0], { size: 2, tile: { wind: 'up' } }] }),
    code: 'not-in-format',
    pattern: 'plain',
    group: 2,
    says: 'Pattern "plain", group 2: "tile.wind" must be "east", "south", "west", "north" or {"var": a name}.',
  },
  {
    title: 'an entry the format does not know',
    json: cardOf({ ...GOOD_PATTERN, colour: 'blue' }),
    code: 'not-in-format',
    pattern: 'plain',
    group: null,
    says: 'Pattern "plain": does not know "colour"; remove it.',
  },
  {
    title: 'a pattern without a usable id, named by its place',
    json: cardOf(GOOD_PATTERN, { ...GOOD_PATTERN, id: 'No Good' }),
    code: 'not-in-format',
    pattern: '2',
    group: null,
    says: 'Pattern 2: "id" must be a small letter and then small letters, digits and single hyphens, at most 40 in all.',
  },
  {
    title: 'another format name',
    json: { ...cardOf(GOOD_PATTERN), format: 'other/2' },
    code: 'not-in-format',
    pattern: null,
    group: null,
    says: 'Card: "format" must be "quadrille-card/1".',
  },
  {
    title: 'a text in place of an object',
    json: 'card',
    code: 'not-in-format',
    pattern: null,
    group: null,
    says: 'Card: must be an object with the entries of the format.',
  },
  {
    title: 'too deep nesting',
    json: { ...cardOf(GOOD_PATTERN), more: deep },
    code: 'too-large',
    pattern: null,
    group: null,
    says: 'Card: the file is too large or nested too deep; a card has at most 300 patterns of at most 14 groups.',
  },
  {
    title: 'too many values',
    json: { ...cardOf(GOOD_PATTERN), more: new Array(200_000).fill(1) },
    code: 'too-large',
    pattern: null,
    group: null,
    says: 'Card: the file is too large or nested too deep; a card has at most 300 patterns of at most 14 groups.',
  },
  {
    title: 'a name that would reach into every object',
    json: JSON.parse('{"parameters": {"__proto__": {"year": 2026}}}'),
    code: 'unsafe-name',
    pattern: null,
    group: null,
    says: 'Card: "__proto__" is no name of the format; remove it.',
  },
];

/** A pattern of 9·8·7 choices of numbers and six of suits: 3,024 hands. */
function widePattern(index: number): unknown {
  return {
    ...GOOD_PATTERN,
    id: `wide-${index + 1}`,
    groups: [
      { size: 5, tile: { number: { var: 'a' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'b' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'c' }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  };
}
