// One group of the shorthand: a number of tiles and a tile, without a blank between them.
import { DRAGONS, NUMBERS, SUITS } from '../../rules/index.ts';
import { STANDARD_NAMES } from '../canonical.ts';
import type { CardGroup, CardTile } from '../format.ts';
import type { SuitsInUse, SuitValue } from './suits.ts';
import { tileWord } from './words.ts';

const GROUP = /^(\d)(?:x(\d)|([abc])(?:([+-]?)(\d))?|([a-z]+)(\d?))$/;
const NO_SUIT = 'there are three suits and all are in use; type /1, /2 or /3 to go back to one.';

/** The group, or what is wrong with it in words. */
export function readGroup(token: string, suits: SuitsInUse): CardGroup | string {
  const wrong = (text: string) => `"${token}": ${text}`;
  const size = Number(token[0]);
  if (size < 1 || size > 6) return wrong('a group has 1 to 6 tiles.');
  const match = GROUP.exec(token);
  if (match === null) {
    return wrong(`type a number of tiles and a tile, like ${size}a, ${size}a+2, ${size}x5 or ${size}flower.`);
  }
  const [, , given, variable, sign, plus, word, digit] = match;
  const tile =
    word === undefined
      ? numberTile({ given, variable, plus: Number(`${sign === '-' ? '-' : ''}${plus ?? 0}`) }, suits)
      : wordTile(word, digit ?? '', suits);
  return typeof tile === 'string' ? wrong(tile) : { size, tile };
}

interface TypedNumber {
  readonly given: string | undefined;
  readonly variable: string | undefined;
  readonly plus: number;
}

function numberTile({ given, variable, plus }: TypedNumber, suits: SuitsInUse): CardTile | string {
  const fixed = NUMBERS.find((number) => number === Number(given));
  if (given !== undefined && fixed === undefined) {
    return 'numbers go from 1 to 9; soap as a zero is "zero".';
  }
  if (Math.abs(plus) > 8) return 'at most 8 lie between two numbers.';
  const suit = suits.current();
  if (suit === null) return NO_SUIT;
  if (fixed !== undefined) return { number: fixed, suit };
  return { number: plus === 0 ? { var: variable! } : { var: variable!, plus }, suit };
}

function wordTile(typed: string, digit: string, suits: SuitsInUse): CardTile | string {
  if ('jokers'.startsWith(typed)) {
    return 'jokers are not typed; they may stand in any group of three or more. Type the tile that they stand for.';
  }
  const found = tileWord(typed);
  if (!found.ok) return found.advice;
  const word = found.value;
  if (digit !== '' && word.is !== 'wind' && word.is !== 'dragon' && word.is !== 'year') {
    return `take the ${digit} away, or put a blank before it.`;
  }
  switch (word.is) {
    case 'flower':
      return { flower: true };
    case 'zero':
      return { zero: true };
    case 'given-wind':
      return { wind: word.wind };
    case 'given-dragon':
      return { dragon: word.dragon };
    case 'wind':
      return variableTile('wind', digit, (name) => ({ wind: { var: name } }));
    case 'dragon':
      return variableTile('dragon', digit, (name) => ({ dragon: { var: name } }));
    case 'match':
      return matchingDragon(suits.current());
    case 'year':
      return yearTile(digit, suits);
  }
}

function variableTile(
  kind: 'wind' | 'dragon',
  digit: string,
  tileOf: (name: string) => CardTile,
): CardTile | string {
  const names = STANDARD_NAMES[kind];
  const name = names[Number(digit || 1) - 1];
  return name === undefined
    ? `there are ${names.length} ${kind}s; type a digit from 1 to ${names.length}.`
    : tileOf(name);
}

/** The dragon of a suit; of a given suit it is a given dragon. */
function matchingDragon(suit: SuitValue | null): CardTile | string {
  if (suit === null) return NO_SUIT;
  if (typeof suit !== 'string') return { dragon: { matching: suit.var } };
  // `DRAGONS` lists the dragons in the order of their suits.
  return { dragon: DRAGONS[SUITS.indexOf(suit)]! };
}

function yearTile(digit: string, suits: SuitsInUse): CardTile | string {
  const place = ([0, 1, 2, 3] as const).find((known) => known === Number(digit) - 1);
  if (place === undefined) return 'say which digit of the year it is, year1 to year4.';
  const suit = suits.current();
  return suit === null ? NO_SUIT : { yearDigit: place, suit };
}
