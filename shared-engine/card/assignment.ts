// The variables of a pattern, the values that each may take, and every way to assign values to all of them.
import {
  DRAGONS,
  type Dragon,
  type Face,
  NUMBERS,
  SUITS,
  type Suit,
  type TileNumber,
  WINDS,
  type Wind,
} from '../rules/index.ts';
import type { CardDomain, CardFile, CardPattern, CardTile } from './format.ts';

export type VariableKind = 'number' | 'suit' | 'dragon' | 'wind';

export interface VariableUse {
  readonly name: string;
  readonly kind: VariableKind;
  /** What is added to a number variable; 0 for the other kinds. */
  readonly plus: number;
  /** Index of the group that names it. */
  readonly group: number;
}

/** Values by variable name, kind by kind. */
export interface Assignment {
  readonly numbers: ReadonlyMap<string, TileNumber>;
  readonly suits: ReadonlyMap<string, Suit>;
  readonly dragons: ReadonlyMap<string, Dragon>;
  readonly winds: ReadonlyMap<string, Wind>;
}

/** Every choice of values, kind by kind; an assignment takes one entry of each kind. */
export interface VariableValues {
  readonly numbers: readonly Assignment['numbers'][];
  readonly suits: readonly Assignment['suits'][];
  readonly dragons: readonly Assignment['dragons'][];
  readonly winds: readonly Assignment['winds'][];
}

/** Every mention of a variable in the groups of a pattern, in reading order. */
export function variableUses(pattern: Pick<CardPattern, 'groups'>): VariableUse[] {
  return pattern.groups.flatMap(({ tile }, group) => {
    const uses: VariableUse[] = [];
    const use = (name: string, kind: VariableKind, plus = 0): number =>
      uses.push({ name, kind, plus, group });
    if ('number' in tile && typeof tile.number === 'object') {
      use(tile.number.var, 'number', tile.number.plus ?? 0);
    }
    if ('suit' in tile && typeof tile.suit === 'object') use(tile.suit.var, 'suit');
    if ('wind' in tile && typeof tile.wind === 'object') use(tile.wind.var, 'wind');
    if ('dragon' in tile && typeof tile.dragon === 'object') {
      if ('matching' in tile.dragon) use(tile.dragon.matching, 'suit');
      else use(tile.dragon.var, 'dragon');
    }
    return uses;
  });
}

/**
 * Every choice of values a pattern allows, kind by kind. Two variables of one kind never take the same value.
 * A number variable without `where` takes each value that keeps all its numbers within 1–9.
 */
export function valuesOf(pattern: Pick<CardPattern, 'groups' | 'where'>): VariableValues {
  const uses = variableUses(pattern);
  const domains = <T>(kind: VariableKind, values: (domain: CardDomain | undefined, name: string) => T[]) =>
    new Map(
      uses
        .filter((use) => use.kind === kind)
        .map(({ name }) => [name, values(pattern.where?.[name], name)] as const),
    );
  return {
    numbers: injections(
      domains('number', (domain, name) => {
        if (domain === undefined) {
          const offsets = uses.filter((use) => use.kind === 'number' && use.name === name);
          return NUMBERS.filter((number) => offsets.every(({ plus }) => inSuit(number + plus)));
        }
        if ('from' in domain) return NUMBERS.filter((n) => n >= domain.from && n <= domain.to);
        return 'numbers' in domain ? NUMBERS.filter((n) => domain.numbers.includes(n)) : [];
      }),
    ),
    suits: injections(
      domains('suit', (domain) => {
        if (domain === undefined) return [...SUITS];
        return 'suits' in domain ? SUITS.filter((suit) => domain.suits.includes(suit)) : [];
      }),
    ),
    dragons: injections(
      domains('dragon', (domain) => {
        if (domain === undefined) return [...DRAGONS];
        return 'dragons' in domain ? DRAGONS.filter((dragon) => domain.dragons.includes(dragon)) : [];
      }),
    ),
    winds: injections(
      domains('wind', (domain) => {
        if (domain === undefined) return [...WINDS];
        return 'winds' in domain ? WINDS.filter((wind) => domain.winds.includes(wind)) : [];
      }),
    ),
  };
}

/** How many assignments can be made of these values. */
export function countOfAssignments(values: VariableValues): number {
  const { numbers, suits, dragons, winds } = values;
  return numbers.length * suits.length * dragons.length * winds.length;
}

/** The face that a tile of the card stands for; null where the assignment gives a number outside 1–9. */
export function faceOf(
  tile: CardTile,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): Face | null {
  if ('flower' in tile) return 'flower';
  if ('zero' in tile) return 'white';
  if ('wind' in tile) {
    return typeof tile.wind === 'string' ? tile.wind : (assignment.winds.get(tile.wind.var) ?? null);
  }
  if ('dragon' in tile) {
    if (typeof tile.dragon === 'string') return tile.dragon;
    if ('var' in tile.dragon) return assignment.dragons.get(tile.dragon.var) ?? null;
    const suit = assignment.suits.get(tile.dragon.matching);
    // `DRAGONS` lists the dragons in the order of their suits.
    return suit === undefined ? null : DRAGONS[SUITS.indexOf(suit)]!;
  }
  const suit = typeof tile.suit === 'string' ? tile.suit : assignment.suits.get(tile.suit.var);
  if (suit === undefined) return null;
  if ('yearDigit' in tile) {
    const digit = parameters.year === undefined ? null : Number(String(parameters.year)[tile.yearDigit]);
    if (digit === 0) return 'white';
    return digit === null ? null : numberedFace(suit, digit);
  }
  if (typeof tile.number === 'number') return numberedFace(suit, tile.number);
  const number = assignment.numbers.get(tile.number.var);
  return number === undefined ? null : numberedFace(suit, number + (tile.number.plus ?? 0));
}

function numberedFace(suit: Suit, number: number): Face | null {
  const known = NUMBERS.find((candidate) => candidate === number);
  return known === undefined ? null : `${suit}-${known}`;
}

function inSuit(number: number): boolean {
  return number >= 1 && number <= 9;
}

/** Every way to give each name a value of its own list, no value twice; one empty map where there are no names. */
function injections<T>(domains: ReadonlyMap<string, readonly T[]>): ReadonlyMap<string, T>[] {
  let partial: ReadonlyMap<string, T>[] = [new Map()];
  for (const [name, values] of domains) {
    partial = partial.flatMap((map) =>
      values
        .filter((value) => ![...map.values()].includes(value))
        .map((value) => new Map([...map, [name, value]])),
    );
  }
  return partial;
}
