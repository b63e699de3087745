// What the card validator says: each kind of problem with its line, its group and what to do.
import { describe, expect, test } from 'vitest';
import {
  CARD_PROBLEM_CODES,
  type CardProblem,
  type CardProblemCode,
  parseCard,
} from '../../shared-engine/index.ts';
import { cardOf, GOOD_LINE, lineOf } from '../kit/card-files.ts';

function problemsOf(json: unknown): readonly CardProblem[] {
  const parsed = parseCard(json);
  return parsed.ok ? [] : parsed.problems;
}

interface Case {
  readonly title: string;
  readonly json: unknown;
  readonly code: CardProblemCode;
  readonly line: string | null;
  readonly group: number | null;
  readonly says: string;
}

const wind = (size: number, name: string) => ({ size, tile: { wind: { var: name } } });
const deep = Array.from({ length: 40 }).reduce<unknown>((inner) => [inner], 0);

const CASES: readonly Case[] = [
  {
    title: 'a line of 13 tiles',
    json: cardOf(lineOf(GOOD_LINE.groups.map((group) => (group.size === 5 ? { ...group, size: 4 } : group)))),
    code: 'not-14-tiles',
    line: 'plain',
    group: null,
    says: 'Line "plain": its groups hold 13 tiles and a line needs 14; add 1.',
  },
  {
    title: 'a line of 16 tiles',
    json: cardOf(lineOf([...GOOD_LINE.groups, { size: 2, tile: { zero: true } }])),
    code: 'not-14-tiles',
    line: 'plain',
    group: null,
    says: 'Line "plain": its groups hold 16 tiles and a line needs 14; take 2 away.',
  },
  {
    title: 'a family the card does not have',
    json: cardOf({ ...GOOD_LINE, family: 'second' }),
    code: 'unknown-family',
    line: 'plain',
    group: null,
    says: 'Line "plain": the card has no family "second"; add it to "families" or correct it.',
  },
  {
    title: 'two lines of one id',
    json: cardOf(GOOD_LINE, GOOD_LINE),
    code: 'duplicate-id',
    line: 'plain',
    group: null,
    says: 'Line "plain": two lines have this id; rename one.',
  },
  {
    title: 'two families of one id',
    json: {
      ...cardOf(GOOD_LINE),
      families: [
        { id: 'first', name: 'A' },
        { id: 'first', name: 'B' },
      ],
    },
    code: 'duplicate-id',
    line: null,
    group: null,
    says: 'Card: two families are called "first"; rename one.',
  },
  {
    title: 'a number beyond nine under one of its choices',
    json: cardOf({ ...GOOD_LINE, where: { n: { from: 3, to: 8 } } }),
    code: 'number-out-of-range',
    line: 'plain',
    group: 2,
    says: 'Line "plain", group 2: its number is 10 when "n" is 8; narrow "where" so that it stays within 1 to 9.',
  },
  {
    title: 'one variable for a number and a suit',
    json: cardOf(
      lineOf([
        { size: 5, tile: { number: { var: 'p' }, suit: { var: 'p' } } },
        { size: 5, tile: { wind: 'east' } },
        { size: 4, tile: { wind: 'west' } },
      ]),
    ),
    code: 'variable-mixed',
    line: 'plain',
    group: 1,
    says: 'Line "plain", group 1: "p" is a suit here and a number in group 1; use two names.',
  },
  {
    title: '"where" for a variable that no group uses',
    json: cardOf({ ...GOOD_LINE, where: { z: { suits: ['bam'] } } }),
    code: 'variable-unused',
    line: 'plain',
    group: null,
    says: 'Line "plain": "where" speaks of "z", which no group uses; remove it.',
  },
  {
    title: 'more variables of one kind than there can be',
    json: cardOf(lineOf([wind(3, 'a'), wind(3, 'b'), wind(3, 'c'), wind(3, 'd'), wind(2, 'e')])),
    code: 'too-many-variables',
    line: 'plain',
    group: null,
    says: 'Line "plain": it has 5 wind variables; at most 4 are allowed.',
  },
  {
    title: 'numbers for a suit variable',
    json: cardOf({ ...GOOD_LINE, where: { p: { numbers: [1, 2] } } }),
    code: 'wrong-where',
    line: 'plain',
    group: null,
    says: 'Line "plain": "p" is a suit; give it "suits".',
  },
  {
    title: 'a range that runs backwards',
    json: cardOf({ ...GOOD_LINE, where: { n: { from: 5, to: 2 } } }),
    code: 'wrong-where',
    line: 'plain',
    group: null,
    says: 'Line "plain": "n" goes from 5 to 2; swap them.',
  },
  {
    title: 'a year digit on a card without a year',
    json: cardOf(
      lineOf([
        { size: 5, tile: { wind: 'north' } },
        { size: 5, tile: { yearDigit: 0, suit: 'bam' } },
        { size: 4, tile: { zero: true } },
      ]),
    ),
    code: 'no-year',
    line: 'plain',
    group: 2,
    says: 'Line "plain", group 2: it uses a year digit; give the card a "year" in "parameters".',
  },
  {
    title: 'two suits that "where" leaves no room for',
    json: cardOf({ ...GOOD_LINE, where: { p: { suits: ['dot'] }, q: { suits: ['dot'] } } }),
    code: 'no-choice',
    line: 'plain',
    group: null,
    says: 'Line "plain": no choice of numbers, suits, dragons and winds fits it; two variables of one kind never take the same value, so widen "where" or use fewer.',
  },
  {
    title: 'more of a face in singles and pairs than the set has',
    json: cardOf(
      lineOf([
        { size: 6, tile: { flower: true } },
        { size: 3, tile: { wind: 'west' } },
        { size: 2, tile: { zero: true } },
        { size: 1, tile: { dragon: 'white' } },
        { size: 2, tile: { dragon: { var: 'x' } } },
      ]),
    ),
    code: 'too-few-copies',
    line: 'plain',
    group: 5,
    says: 'Line "plain", group 5: singles and pairs of this line want 5 × white (x = white), the set has 4 and no joker may stand there; want fewer or rule this choice out with "where".',
  },
  {
    title: 'a line that nine jokers would have to fill',
    json: cardOf(
      lineOf([
        { size: 6, tile: { wind: 'south' } },
        { size: 6, tile: { wind: 'south' } },
        { size: 1, tile: { wind: 'south' } },
        { size: 1, tile: { flower: true } },
      ]),
    ),
    code: 'too-many-jokers',
    line: 'plain',
    group: null,
    says: 'Line "plain": it cannot do without 9 jokers, and the set has 8; spread its groups over more faces.',
  },
  {
    title: 'a card of more hands than a table can search',
    json: cardOf(...Array.from({ length: 12 }, (_, index) => wideLine(index))),
    code: 'too-many-hands',
    line: 'wide-1',
    group: null,
    says: 'Line "wide-1": with it the card comes to more than 20000 hands; fix some of its variables with "where".',
  },
  {
    title: 'a group of seven',
    json: cardOf(lineOf([{ ...GOOD_LINE.groups[0]!, size: 7 }])),
    code: 'not-in-format',
    line: 'plain',
    group: 1,
    says: 'Line "plain", group 1: "size" must be a whole number from 1 to 6.',
  },
  {
    title: 'a wind that does not blow',
    json: cardOf({ ...GOOD_LINE, groups: [GOOD_LINE.groups[0], { size: 2, tile: { wind: 'up' } }] }),
    code: 'not-in-format',
    line: 'plain',
    group: 2,
    says: 'Line "plain", group 2: "tile.wind" must be "east", "south", "west", "north" or {"var": a name}.',
  },
  {
    title: 'an entry the format does not know',
    json: cardOf({ ...GOOD_LINE, colour: 'blue' }),
    code: 'not-in-format',
    line: 'plain',
    group: null,
    says: 'Line "plain": does not know "colour"; remove it.',
  },
  {
    title: 'a line without a usable id, named by its place',
    json: cardOf(GOOD_LINE, { ...GOOD_LINE, id: 'No Good' }),
    code: 'not-in-format',
    line: '2',
    group: null,
    says: 'Line 2: "id" must be a small letter and then small letters, digits and single hyphens, at most 40 in all.',
  },
  {
    title: 'another format',
    json: { ...cardOf(GOOD_LINE), format: 'other/2' },
    code: 'not-in-format',
    line: null,
    group: null,
    says: 'Card: "format" must be "quadrille-card/1".',
  },
  {
    title: 'no object at all',
    json: 'card',
    code: 'not-in-format',
    line: null,
    group: null,
    says: 'Card: must be an object with the entries of the format.',
  },
  {
    title: 'a file nested too deep',
    json: { ...cardOf(GOOD_LINE), more: deep },
    code: 'too-large',
    line: null,
    group: null,
    says: 'Card: the file is too large or nested too deep; a card has at most 300 lines of at most 14 groups.',
  },
  {
    title: 'a file with too many values',
    json: { ...cardOf(GOOD_LINE), more: new Array(200_000).fill(1) },
    code: 'too-large',
    line: null,
    group: null,
    says: 'Card: the file is too large or nested too deep; a card has at most 300 lines of at most 14 groups.',
  },
  {
    title: 'a name that would reach into every object',
    json: JSON.parse('{"parameters": {"__proto__": {"year": 2026}}}'),
    code: 'unsafe-name',
    line: null,
    group: null,
    says: 'Card: "__proto__" is no name of the format; remove it.',
  },
];

/** A line of 9·8·7 choices of numbers and six of suits: 3,024 hands. */
function wideLine(index: number): unknown {
  return {
    ...GOOD_LINE,
    id: `wide-${index < 6 ? `a${index}` : index - 5}`,
    groups: [
      { size: 5, tile: { number: { var: 'a' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'b' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'c' }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  };
}

describe('each problem names the place and what to do', () => {
  test.each(CASES)('$title', ({ json, code, line, group, says }) => {
    expect(problemsOf(json)).toEqual([{ code, line, group, sentence: says }]);
  });

  test('every kind of problem is among these', () => {
    expect(new Set(CASES.map(({ code }) => code))).toEqual(new Set(CARD_PROBLEM_CODES));
  });
});

test('faults of several lines, of structure and of meaning, are told at once', () => {
  const problems = problemsOf(
    cardOf(
      { ...GOOD_LINE, id: 'short', groups: GOOD_LINE.groups.slice(1) },
      { ...GOOD_LINE, id: 'odd', points: 'many', groups: [{ size: 0, tile: { flower: true } }] },
      { ...GOOD_LINE, id: 'lost', family: 'nowhere', where: { n: { from: 9, to: 9 } } },
    ),
  );
  expect(problems.map(({ line, group, code }) => `${line} ${group} ${code}`).sort()).toEqual([
    'lost 2 number-out-of-range',
    'lost null unknown-family',
    'odd 1 not-in-format',
    'odd null not-in-format',
    'short null not-14-tiles',
  ]);
});

test('a card without a fault comes back as it was', () => {
  const json = cardOf(GOOD_LINE, { ...GOOD_LINE, id: 'second', where: { n: { numbers: [2, 4] } } });
  expect(parseCard(json)).toEqual({ ok: true, card: json });
});
