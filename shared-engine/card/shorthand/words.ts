// The words of the shorthand, each of which may be cut short as long as it cannot be mistaken for another.
import { DRAGONS, type Dragon, SUITS, type Suit, WINDS, type Wind } from '../../rules/index.ts';

/** `soap` is what players call the white dragon. */
const DRAGON_WORDS: Record<Dragon, string> = { green: 'green', red: 'red', white: 'soap' };

export const dragonWord = (dragon: Dragon): string => DRAGON_WORDS[dragon];

/** What may follow the number of tiles in a group, apart from numbers. */
export type TileWord =
  | { readonly is: 'flower' | 'zero' | 'match' }
  | { readonly is: 'wind' | 'dragon'; readonly given?: Wind | Dragon }
  | { readonly is: 'given-wind'; readonly wind: Wind }
  | { readonly is: 'given-dragon'; readonly dragon: Dragon }
  | { readonly is: 'year' };

const TILE_WORDS: ReadonlyMap<string, TileWord> = new Map<string, TileWord>([
  ['flower', { is: 'flower' }],
  ['zero', { is: 'zero' }],
  ['match', { is: 'match' }],
  ['wind', { is: 'wind' }],
  ['dragon', { is: 'dragon' }],
  ['year', { is: 'year' }],
  ...WINDS.map((wind): [string, TileWord] => [wind, { is: 'given-wind', wind }]),
  ...DRAGONS.map((dragon): [string, TileWord] => [DRAGON_WORDS[dragon], { is: 'given-dragon', dragon }]),
]);
const SUIT_WORDS: ReadonlyMap<string, Suit> = new Map(SUITS.map((suit) => [suit, suit]));
const WIND_WORDS: ReadonlyMap<string, Wind> = new Map(WINDS.map((wind) => [wind, wind]));
const DRAGONS_BY_WORD: ReadonlyMap<string, Dragon> = new Map(
  DRAGONS.map((dragon) => [DRAGON_WORDS[dragon], dragon]),
);
const LIMIT_WORDS: ReadonlyMap<string, 'suit' | 'wind' | 'dragon'> = new Map([
  ['suit', 'suit'],
  ['wind', 'wind'],
  ['dragon', 'dragon'],
]);

export type Found<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly advice: string };

export const tileWord = (typed: string) => wordIn(TILE_WORDS, typed);
export const suitWord = (typed: string) => wordIn(SUIT_WORDS, typed);
export const windWord = (typed: string) => wordIn(WIND_WORDS, typed);
export const dragonOf = (typed: string) => wordIn(DRAGONS_BY_WORD, typed);
export const limitWord = (typed: string) => wordIn(LIMIT_WORDS, typed);

/** The one word that begins with what was typed, or that it is the plural of. */
function wordIn<T>(words: ReadonlyMap<string, T>, typed: string): Found<T> {
  const singular = typed.endsWith('s') ? typed.slice(0, -1) : typed;
  const whole = words.get(typed) ?? words.get(singular);
  if (whole !== undefined) return { ok: true, value: whole };
  const begun = [...words].filter(([word]) => word.startsWith(typed));
  if (begun.length === 1) return { ok: true, value: begun[0]![1] };
  const names = begun.map(([word]) => word);
  return {
    ok: false,
    advice:
      names.length > 1
        ? `"${typed}" may be ${names.join(' or ')}; type one letter more.`
        : `"${typed}" is none of ${[...words.keys()].join(', ')}.`,
  };
}
