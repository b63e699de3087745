// The card compiler: small cards with known hands, counts by combinatorics, and every choice by brute force.
import { describe, expect, test } from 'vitest';
import { compileCard } from '../../shared-engine/card/compile.ts';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import type { CardGroup, CardPattern } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD, houseCard } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type Face, SUITS } from '../../shared-engine/rules/tiles/face.ts';
import { cardOf, patternOf } from '../kit/card-files.ts';
import { handsByBruteForce, handText } from '../kit/card-hands.ts';

function compiled(groups: readonly CardGroup[], more: Record<string, unknown> = {}): CompiledCard {
  const parsed = parseCard({ ...cardOf(patternOf(groups, more)), parameters: { year: 2026 } });
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join('\n'));
  return compileCard(parsed.card);
}

const n = (plus: number) => (plus === 0 ? { var: 'n' } : { var: 'n', plus });
const run = (size: number, plus: number, suit: string): CardGroup => ({
  size,
  tile: { number: n(plus), suit: { var: suit } },
});
const flowers = (size: number): CardGroup => ({ size, tile: { flower: true } });

describe('hands of small cards, written out by hand', () => {
  test('a compiled hand holds singles and pairs apart from groups that a joker may join', () => {
    const card = compiled([
      { size: 1, tile: { wind: 'east' } },
      { size: 2, tile: { dragon: 'red' } },
      { size: 3, tile: { number: 7, suit: 'dot' } },
      { size: 2, tile: { number: 7, suit: 'dot' } },
      { size: 6, tile: { flower: true } },
    ]);
    expect(card.hands.map(({ singles, groups }) => [facesOf(singles), facesOf(groups)])).toEqual([
      [
        ['dot-7', 'dot-7', 'east', 'red', 'red'],
        ['dot-7', 'dot-7', 'dot-7', ...new Array<Face>(6).fill('flower')],
      ],
    ]);
  });

  test('a matching dragon is green for bam, red for crak and white for dot (common practice, no source)', () => {
    const card = compiled([
      flowers(6),
      { size: 4, tile: { number: 1, suit: { var: 'p' } } },
      { size: 4, tile: { dragon: { matching: 'p' } } },
    ]);
    expect(card.hands.map(({ groups }) => [...new Set(facesOf(groups))])).toEqual([
      ['bam-1', 'green', 'flower'],
      ['crak-1', 'red', 'flower'],
      ['dot-1', 'white', 'flower'],
    ]);
  });

  test('a year digit has the suit of its tile, and the digit 0 is soap', () => {
    const digits = ([0, 1, 2, 3] as const).map(
      (yearDigit): CardGroup => ({ size: 2, tile: { yearDigit, suit: 'crak' } }),
    );
    const [hand] = compiled([...digits, flowers(6)]).hands;
    expect(facesOf(hand!.singles)).toEqual([
      ...new Array<Face>(4).fill('crak-2'),
      'crak-6',
      'crak-6',
      'white',
      'white',
    ]);
  });

  test('"where" limits a variable to its list', () => {
    const card = compiled([run(5, 0, 'p'), run(5, 1, 'p'), flowers(4)], {
      where: { n: { numbers: [2, 8] }, p: { suits: ['bam', 'dot'] } },
    });
    expect(card.hands.map(({ groups }) => [...new Set(facesOf(groups))].slice(0, 2).join())).toEqual([
      'bam-2,bam-3',
      'dot-2,dot-3',
      'bam-8,bam-9',
      'dot-8,dot-9',
    ]);
  });
});

const dragon = (size: number, name: string): CardGroup => ({ size, tile: { dragon: { var: name } } });
const wind = (size: number, name: string): CardGroup => ({ size, tile: { wind: { var: name } } });
const choose = (from: number, count: number): number =>
  count === 0 ? 1 : (choose(from - 1, count - 1) * from) / count;

describe('how many hands a pattern has, by combinatorics', () => {
  test.each([
    {
      what: 'a run of w in one suit: (10 − w) · 3',
      groups: [5, 4, 3, 2].map((s, i) => run(s, i, 'p')),
      count: 6 * 3,
    },
    {
      what: 'a run of 4 over two suits: 6 starts · 3 · 2',
      groups: [run(5, 0, 'p'), run(4, 1, 'p'), run(3, 2, 'q'), run(2, 3, 'q')],
      count: 6 * 3 * 2,
    },
    {
      what: 'like numbers in three suits, all sizes different: 9 · 3!',
      groups: [run(6, 0, 'p'), run(5, 0, 'q'), run(3, 0, 'r')],
      count: 9 * 6,
    },
    {
      what: 'like numbers in three suits, two sizes the same: 9 · 3!/2!',
      groups: [run(5, 0, 'p'), run(5, 0, 'q'), run(4, 0, 'r')],
      count: 9 * 3,
    },
    {
      what: 'two winds of four in equal groups: C(4, 2)',
      groups: [wind(4, 'a'), wind(4, 'b'), flowers(6)],
      count: choose(4, 2),
    },
    {
      what: 'two winds in unequal groups: 4 · 3',
      groups: [wind(5, 'a'), wind(3, 'b'), flowers(6)],
      count: 12,
    },
    {
      what: 'all dragons in equal groups: 1',
      groups: [dragon(4, 'x'), dragon(4, 'y'), dragon(4, 'z'), flowers(2)],
      count: 1,
    },
    {
      what: 'two free numbers of one suit in equal groups: C(9, 2) · 3',
      groups: [
        { size: 4, tile: { number: { var: 'a' }, suit: { var: 'p' } } },
        { size: 4, tile: { number: { var: 'b' }, suit: { var: 'p' } } },
        flowers(6),
      ] satisfies CardGroup[],
      count: choose(9, 2) * 3,
    },
    {
      what: 'fixed tiles: 1',
      groups: [
        { size: 6, tile: { zero: true } },
        { size: 6, tile: { wind: 'north' } },
        flowers(2),
      ] satisfies CardGroup[],
      count: 1,
    },
  ])('a pattern has as many hands as combinatorics says: $what', ({ groups, count }) => {
    expect(compiled(groups).hands).toHaveLength(count);
  });

  test.each([
    ['one-suit-1', (9 - 5) * 3],
    ['twin-suits-2', (9 - 4) * choose(3, 2)],
    ['three-suits-4', (9 - 4) * 3 * 2 * 1],
    ['three-suits-9', 9 - 4],
    ['stairs-7', 3 * 2],
    ['bookends-1', SUITS.length],
    ['two-winds-6', 4 * 3 * 3],
    ['matching-dragons-5', 9 * 2],
    ['garden-4', choose(3, 2) * 4],
  ])('pattern %s of the house card has %i hands', (id, count) => {
    const pattern = houseCard().patterns.findIndex((known) => known.id === id);
    expect(houseCard().hands.filter((hand) => hand.pattern === pattern)).toHaveLength(count);
  });
});

describe('every pattern of the house card under every choice, by brute force', () => {
  test.each(HOUSE_CARD.patterns.map((pattern): [string, CardPattern] => [pattern.id, pattern]))(
    'pattern %s of the house card compiles to exactly the hands that brute force finds',
    (id, pattern) => {
      const place = houseCard().patterns.findIndex((known) => known.id === id);
      const ours = houseCard()
        .hands.filter((hand) => hand.pattern === place)
        .map(handText);
      expect(new Set(ours).size).toBe(ours.length);
      expect(new Set(ours)).toEqual(handsByBruteForce(pattern, HOUSE_CARD.parameters.year));
    },
  );
});
