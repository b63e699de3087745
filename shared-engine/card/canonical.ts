// A pattern with standard names for its variables, so that patterns that differ only in names are written alike.
import { DRAGONS, type Dragon, NUMBERS, SUITS, type Suit, WINDS, type Wind } from '../rules/index.ts';
import { type VariableKind, variableUses } from './assignment.ts';
import type { CardDomain, CardPattern, CardTile } from './format.ts';

/** What a pattern says, without its place on a card. */
export type PatternBody = Omit<CardPattern, 'id' | 'section'>;

/** Standard names in order of appearance; they are also what the shorthand calls the variables. */
export const STANDARD_NAMES: Record<VariableKind, readonly string[]> = {
  number: ['a', 'b', 'c'],
  suit: ['suit1', 'suit2', 'suit3'],
  dragon: ['dragon1', 'dragon2', 'dragon3'],
  wind: ['wind1', 'wind2', 'wind3', 'wind4'],
};

/**
 * The same hands under standard names: limits in order of appearance with their values in order and once each, no
 * `plus` of 0, no limit of a variable that no group uses. Takes patterns within the limits of the format.
 */
export function canonicalPattern(pattern: PatternBody): PatternBody {
  const names = standardNames(pattern);
  const renamed = (name: string) => names.get(name) ?? name;
  const { where, points, concealed } = pattern;
  const limits = [...names].flatMap(([name, standard]) => {
    const domain = where && Object.hasOwn(where, name) ? where[name] : undefined;
    return domain ? [[standard, orderedDomain(domain)] as const] : [];
  });
  const groups = pattern.groups.map(({ size, tile }) => ({ size, tile: renamedTile(tile, renamed) }));
  const body = { points, concealed, groups };
  return limits.length === 0 ? body : { ...body, where: Object.fromEntries(limits) };
}

/** From each name that the groups use to its standard name, in order of appearance. */
export function standardNames(pattern: Pick<CardPattern, 'groups'>): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const counts: Record<VariableKind, number> = { number: 0, suit: 0, dragon: 0, wind: 0 };
  for (const { name, kind } of variableUses(pattern)) {
    if (names.has(name)) continue;
    names.set(name, STANDARD_NAMES[kind][counts[kind]] ?? name);
    counts[kind]++;
  }
  return names;
}

function renamedTile(tile: CardTile, renamed: (name: string) => string): CardTile {
  const chosen = <T extends string>(value: T | { readonly var: string }) =>
    typeof value === 'object' ? { var: renamed(value.var) } : value;
  if ('number' in tile) {
    const { number } = tile;
    const suit = chosen<Suit>(tile.suit);
    if (typeof number === 'number') return { number, suit };
    const name = renamed(number.var);
    return { number: number.plus ? { var: name, plus: number.plus } : { var: name }, suit };
  }
  if ('yearDigit' in tile) return { yearDigit: tile.yearDigit, suit: chosen<Suit>(tile.suit) };
  if ('wind' in tile) return { wind: chosen<Wind>(tile.wind) };
  if (!('dragon' in tile)) return tile;
  if (typeof tile.dragon === 'object' && 'matching' in tile.dragon) {
    return { dragon: { matching: renamed(tile.dragon.matching) } };
  }
  return { dragon: chosen<Dragon>(tile.dragon) };
}

function orderedDomain(domain: CardDomain): CardDomain {
  if ('from' in domain) return domain;
  if ('numbers' in domain) return { numbers: NUMBERS.filter((number) => domain.numbers.includes(number)) };
  if ('suits' in domain) return { suits: SUITS.filter((suit) => domain.suits.includes(suit)) };
  if ('dragons' in domain) return { dragons: DRAGONS.filter((dragon) => domain.dragons.includes(dragon)) };
  return { winds: WINDS.filter((wind) => domain.winds.includes(wind)) };
}
