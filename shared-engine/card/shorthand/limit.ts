// A limit of the shorthand: which numbers, suits, winds or dragons something may be.
import { NUMBERS } from '../../rules/index.ts';
import { STANDARD_NAMES } from '../canonical.ts';
import type { CardDomain } from '../format.ts';
import { dragonOf, type Found, limitWord, suitWord, windWord } from './words.ts';

/** Takes `a=2-5`, `a=2,4` or `wind=east,west` into the limits; returns what is wrong, or null. */
export function readLimit(token: string, limits: Map<string, CardDomain>): string | null {
  const [name = '', values = '', ...more] = token.split('=');
  const read = more.length > 0 ? 'there is one "=" too many.' : limitOf(name, values);
  if (typeof read === 'string') return `"${token}": ${read}`;
  if (limits.has(read.name)) return `"${token}": it has a limit already; keep one of them.`;
  limits.set(read.name, read.domain);
  return null;
}

interface Limit {
  readonly name: string;
  readonly domain: CardDomain;
}

function limitOf(name: string, values: string): Limit | string {
  if (STANDARD_NAMES.number.includes(name)) {
    const domain = numbersOf(values);
    return typeof domain === 'string' ? domain : { name, domain };
  }
  const [, word = '', digit = ''] = /^([a-z]*)(\d?)$/.exec(name) ?? [];
  const kind = word === '' ? null : limitWord(word);
  if (!kind?.ok) return 'a limit begins with a, b, c, suit, wind or dragon, like a=2-5 or wind=east,west.';
  const full = STANDARD_NAMES[kind.value][Number(digit || 1) - 1];
  if (full === undefined) return `there are ${STANDARD_NAMES[kind.value].length} of these at most.`;
  const domain = wordsOf(kind.value, values.split(','));
  return typeof domain === 'string' ? domain : { name: full, domain };
}

function numbersOf(values: string): CardDomain | string {
  const range = /^([1-9])-([1-9])$/.exec(values);
  if (range) return { from: numberOf(range[1]!), to: numberOf(range[2]!) };
  if (!/^[1-9](,[1-9])*$/.test(values)) return 'name numbers from 1 to 9, like 2-5 or 2,4,6.';
  return { numbers: values.split(',').map(numberOf) };
}

function numberOf(digit: string) {
  return NUMBERS[Number(digit) - 1]!;
}

function wordsOf(kind: 'suit' | 'wind' | 'dragon', typed: readonly string[]): CardDomain | string {
  switch (kind) {
    case 'suit':
      return all(typed.map(suitWord), (suits) => ({ suits }));
    case 'wind':
      return all(typed.map(windWord), (winds) => ({ winds }));
    case 'dragon':
      return all(typed.map(dragonOf), (dragons) => ({ dragons }));
  }
}

function all<T>(found: readonly Found<T>[], domainOf: (values: T[]) => CardDomain): CardDomain | string {
  const values: T[] = [];
  for (const one of found) {
    if (!one.ok) return one.advice;
    values.push(one.value);
  }
  return domainOf(values);
}
