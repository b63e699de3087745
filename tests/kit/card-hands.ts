// Every hand of a card pattern by brute force: all values for all variables, most of them thrown away.
import type { Hand } from '../../shared-engine/card/compiled.ts';
import type { CardPattern, CardTile } from '../../shared-engine/card/format.ts';
import { copiesOf, FACES, isFace } from '../../shared-engine/rules/tiles/face.ts';

const VALUES = { number: '123456789', suit: 'bcd', dragon: 'grw', wind: 'eswn' } as const;
const FULL_NAMES: Readonly<Record<string, string>> = {
  b: 'bam',
  c: 'crak',
  d: 'dot',
  g: 'green',
  r: 'red',
  w: 'white',
};
const WIND_NAMES: Readonly<Record<string, string>> = { e: 'east', s: 'south', w: 'west', n: 'north' };
const DRAGON_OF: Readonly<Record<string, string>> = { b: 'green', c: 'red', d: 'white' };

type Kind = keyof typeof VALUES;
type Values = ReadonlyMap<string, string>;

/** A hand in words: each face wanted and whether jokers may help, sorted; equal hands have equal words. */
export function handText({ singles, groups }: Pick<Hand, 'singles' | 'groups'>): string {
  return FACES.flatMap((face, index) => [
    ...new Array<string>(singles[index]!).fill(`${face} alone`),
    ...new Array<string>(groups[index]!).fill(`${face} together`),
  ])
    .sort()
    .join(', ');
}

/** The hands of a pattern as `handText` writes them; values out of the set or of `where` do not count. */
export function handsByBruteForce(pattern: CardPattern, year: number | undefined): Set<string> {
  const kinds = kindsOf(pattern);
  const hands = new Set<string>();
  const names = [...kinds.keys()];
  const walk = (values: Values): void => {
    const name = names[values.size];
    if (name !== undefined) {
      for (const value of VALUES[kinds.get(name)!]) walk(new Map([...values, [name, value]]));
      return;
    }
    const clash = names.some((a) =>
      names.some((b) => a < b && kinds.get(a) === kinds.get(b) && values.get(a) === values.get(b)),
    );
    if (clash || names.some((known) => !allowed(pattern, known, values.get(known)!))) return;
    const wanted = pattern.groups.flatMap(({ size, tile }) =>
      new Array<string>(size).fill(`${faceText(tile, values, year)} ${size < 3 ? 'alone' : 'together'}`),
    );
    if (isInSet(wanted)) hands.add(wanted.sort().join(', '));
  };
  walk(new Map());
  return hands;
}

function kindsOf(pattern: CardPattern): ReadonlyMap<string, Kind> {
  const kinds = new Map<string, Kind>();
  for (const { tile } of pattern.groups) {
    for (const [entry, value] of Object.entries(tile)) {
      if (typeof value !== 'object') continue;
      if ('matching' in value) kinds.set(value.matching, 'suit');
      else if (entry === 'number' || entry === 'suit' || entry === 'dragon' || entry === 'wind') {
        kinds.set(value.var, entry);
      }
    }
  }
  return kinds;
}

function allowed(pattern: CardPattern, name: string, value: string): boolean {
  const domain = pattern.where?.[name];
  if (domain === undefined) return true;
  if ('from' in domain) return Number(value) >= domain.from && Number(value) <= domain.to;
  if ('numbers' in domain) return domain.numbers.map(String).includes(value);
  if ('suits' in domain) return domain.suits.map(String).includes(FULL_NAMES[value]!);
  if ('dragons' in domain) return domain.dragons.map(String).includes(FULL_NAMES[value]!);
  return domain.winds.map(String).includes(WIND_NAMES[value]!);
}

function faceText(tile: CardTile, values: Values, year: number | undefined): string {
  if ('flower' in tile) return 'flower';
  if ('zero' in tile) return 'white';
  if ('wind' in tile)
    return typeof tile.wind === 'string' ? tile.wind : WIND_NAMES[values.get(tile.wind.var)!]!;
  if ('dragon' in tile) {
    if (typeof tile.dragon === 'string') return tile.dragon;
    return 'var' in tile.dragon
      ? FULL_NAMES[values.get(tile.dragon.var)!]!
      : DRAGON_OF[values.get(tile.dragon.matching)!]!;
  }
  const suit = typeof tile.suit === 'string' ? tile.suit : FULL_NAMES[values.get(tile.suit.var)!]!;
  if ('yearDigit' in tile) {
    const digit = `${year}`.charAt(tile.yearDigit);
    return digit === '0' ? 'white' : `${suit}-${digit}`;
  }
  const number =
    typeof tile.number === 'number'
      ? tile.number
      : Number(values.get(tile.number.var)) + (tile.number.plus ?? 0);
  return `${suit}-${number}`;
}

/** Whether each face exists, and naturals suffice where no joker may stand. */
function isInSet(wanted: readonly string[]): boolean {
  return wanted.every((entry) => {
    const face = entry.split(' ')[0]!;
    return isFace(face) && wanted.filter((other) => other === `${face} alone`).length <= copiesOf(face);
  });
}
