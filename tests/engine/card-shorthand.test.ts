// The shorthand of hands: what is read, what is said of what cannot be read, and that JSON and text are one pattern.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalPattern } from '../../shared-engine/card/canonical.ts';
import { distinctHandsOf } from '../../shared-engine/card/compile.ts';
import type { CardPattern } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { patternReport } from '../../shared-engine/card/report.ts';
import { readShorthand } from '../../shared-engine/card/shorthand/read.ts';
import { writeShorthand } from '../../shared-engine/card/shorthand/write.ts';
import { handText } from '../kit/card-hands.ts';
import { drawnPattern } from '../kit/drawn-patterns.ts';
import { typedBriefly } from '../kit/typed-briefly.ts';

function read(text: string) {
  const answer = readShorthand(text);
  if (!answer.ok) throw new Error(answer.problems.map(({ message }) => message).join('\n'));
  return answer.pattern;
}

const problems = (text: string) => {
  const answer = readShorthand(text);
  return answer.ok ? [] : answer.problems.map(({ group, message }) => [group, message]);
};

const hands = (pattern: CardPattern) => distinctHandsOf(pattern, { year: 2047 }).map(handText).sort();
const a = (plus = 0) => (plus === 0 ? { var: 'a' } : { var: 'a', plus });
const suit = (nth: number) => ({ var: `suit${nth}` });

test('H1 a group is a number of tiles and a tile: a number left open, a given one or a word', () => {
  expect(read('2a 3a+2 1b-1 4x5 2flower 2zero').groups).toEqual([
    { size: 2, tile: { number: a(), suit: suit(1) } },
    { size: 3, tile: { number: a(2), suit: suit(1) } },
    { size: 1, tile: { number: { var: 'b', plus: -1 }, suit: suit(1) } },
    { size: 4, tile: { number: 5, suit: suit(1) } },
    { size: 2, tile: { flower: true } },
    { size: 2, tile: { zero: true } },
  ]);
  expect(read('2wind 2wind2 2east 2dragon 2dragon2 2soap 2red').groups.map(({ tile }) => tile)).toEqual([
    { wind: { var: 'wind1' } },
    { wind: { var: 'wind2' } },
    { wind: 'east' },
    { dragon: { var: 'dragon1' } },
    { dragon: { var: 'dragon2' } },
    { dragon: 'white' },
    { dragon: 'red' },
  ]);
});

test('H2 a slash goes to another suit, one with a digit back, one with a name to that suit', () => {
  const suits = read('2a / 2a 2match /1 2a+1 /dot 2x3 2match / 2year3').groups.map(({ tile }) =>
    'suit' in tile ? tile.suit : tile,
  );
  expect(suits).toEqual([
    suit(1),
    suit(2),
    { dragon: { matching: 'suit2' } },
    suit(1),
    'dot',
    { dragon: 'white' },
    suit(3),
  ]);
  expect(read('/ 2a // 2a/').groups).toEqual(read('2a /2a').groups);
});

test('H3 words may be cut short, in capitals or the plural, and a plus may be missing', () => {
  expect(read('2A2 3×5 2f 2flowers 4sou 3g 2m / 2y4 SUIT=b,d c')).toEqual(
    read('2a+2 3x5 2flower 2flower 4south 3green 2match / 2year4 suit=bam,dot concealed'),
  );
  expect(problems('2s')).toEqual([[1, '"2s": "s" may be south or soap; type one letter more.']]);
});

test('H4 limits name what something may be, a number alone the points', () => {
  expect(read('2a 2wind 2dragon a=2-5 wind=east , west drag=g,soap suit = crak 40')).toMatchObject({
    points: 40,
    concealed: false,
    where: {
      a: { from: 2, to: 5 },
      suit1: { suits: ['crak'] },
      wind1: { winds: ['east', 'west'] },
      dragon1: { dragons: ['green', 'white'] },
    },
  });
  expect(read('').points).toBe(25);
});

test('H5 a pattern has one text, whatever its variables are called', () => {
  const pattern = read('2b 2c+1 /dot 2b b=4,2 30');
  expect(writeShorthand(pattern)).toBe('2a 2b+1 /dot 2a a=2,4 30');
  expect(writeShorthand(HOUSE_CARD.patterns[1]!)).toBe('4a 4a+3 3a+4 3flower 26');
});

test('H5 text and JSON are the same pattern: 10,000 drawn patterns are written, read and written alike', () => {
  fc.assert(
    fc.property(drawnPattern, (pattern) => {
      const text = writeShorthand(pattern);
      const back = read(text);
      // As JSON: a deep comparison of so many takes seconds.
      return (
        JSON.stringify(back) === JSON.stringify(canonicalPattern(pattern)) &&
        writeShorthand(back) === text &&
        JSON.stringify(read(typedBriefly(text))) === JSON.stringify(back)
      );
    }),
    { seed: 16, numRuns: 10_000 },
  );
});

test('H5 standard names change no hand: drawn patterns have the hands that their text has', () => {
  let compared = 0;
  fc.assert(
    fc.property(drawnPattern, (pattern) => {
      if (patternReport(pattern, { year: 2047 }).problems.length > 0) return;
      compared++;
      const back: CardPattern = { ...pattern, ...read(writeShorthand(pattern)) };
      expect(hands(back)).toEqual(hands(pattern));
    }),
    { seed: 17, numRuns: 300 },
  );
  expect(compared).toBeGreaterThan(20);
});

test('the house card takes at most 30 keys a hand, all points and limits included', () => {
  const keys = HOUSE_CARD.patterns.map((pattern) => typedBriefly(writeShorthand(pattern)).length + 1);
  expect(keys.reduce((sum, count) => sum + count, 0) / keys.length).toBeLessThan(30);
});

describe('H6 what cannot be read is named, with what to type instead', () => {
  test.each<[string, number | null, string]>([
    ['7a', 1, '"7a": a group has 1 to 6 tiles.'],
    [
      '2a 3q',
      2,
      '"3q": "q" is none of flower, zero, match, wind, dragon, year, east, south, west, north, green, red, soap.',
    ],
    [
      '4a 2joker',
      2,
      '"2joker": jokers are not typed; they may stand in any group of three or more. Type the tile that they stand for.',
    ],
    ['3a+', 1, '"3a+": type a number of tiles and a tile, like 3a, 3a+2, 3x5 or 3flower.'],
    ['2x0', 1, '"2x0": numbers go from 1 to 9; soap as a zero is "zero".'],
    ['2a9', 1, '"2a9": at most 8 lie between two numbers.'],
    ['2flower2', 1, '"2flower2": take the 2 away, or put a blank before it.'],
    ['2wind5', 1, '"2wind5": there are 4 winds; type a digit from 1 to 4.'],
    ['2year', 1, '"2year": say which digit of the year it is, year1 to year4.'],
    [
      '2a / 2a / 2a / 2a',
      4,
      '"2a": there are three suits and all are in use; type /1, /2 or /3 to go back to one.',
    ],
    ['/2 2a', null, '"/2" goes back to a suit that is not there yet; type "/" alone for another suit.'],
    ['/x 2a', null, '"/x": "x" is none of bam, crak, dot.'],
    [
      '3 a',
      null,
      '"a" is nothing that I know here; a group is a number of tiles and a tile without a blank, like 3a or 2flower.',
    ],
    ['2a 20 30', null, 'The points are 20 already; type "30" together with its tile if it is a group.'],
    ['2a 2000', null, 'A hand has 0 to 1000 points, not 2000.'],
    ['2a a=12', null, '"a=12": name numbers from 1 to 9, like 2-5 or 2,4,6.'],
    [
      '2a q=3',
      null,
      '"q=3": a limit begins with a, b, c, suit, wind or dragon, like a=2-5 or wind=east,west.',
    ],
    ['2a suit4=bam', null, '"suit4=bam": there are 3 of these at most.'],
    ['2a a=2 a=3', null, '"a=3": it has a limit already; keep one of them.'],
    ['2a a==3', null, '"a==3": there is one "=" too many.'],
    ['2wind wind=x', null, '"wind=x": "x" is none of east, south, west, north.'],
    ['2f '.repeat(15), 15, 'A hand has at most 14 groups; join some or take them out.'],
    ['2a '.repeat(200), null, 'That is too long for one hand; use at most 400 characters.'],
  ])('H6 %.40s', (text, group, message) => {
    const [first] = problems(text);
    expect(first?.[0]).toBe(group);
    expect(first?.[1]).toBe(message);
  });

  test('H6 whatever is typed, the reader answers with a pattern or with words', () => {
    const typed = fc.oneof(
      fc.string(),
      fc
        .array(fc.constantFrom('2a', '/', '3', 'x', '=', 'wind', '+', 'b', ',', '9', ' ', 'c', '/2'), {
          maxLength: 20,
        })
        .map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const answer = readShorthand(text);
        if (answer.ok) expect(read(writeShorthand(answer.pattern))).toEqual(answer.pattern);
        else expect(answer.problems.every(({ message }) => /\.$/.test(message))).toBe(true);
      }),
      { seed: 18, numRuns: 1_000 },
    );
  });
});
