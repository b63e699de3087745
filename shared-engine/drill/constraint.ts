// A constraint on a rack: which traits it may set, how each is counted, and how a sentence names it.
import { type Bag, NUMBERS } from '../rules/index.ts';
import type { Amount, Constraint } from './format.ts';

/**
 * What a constraint may set, besides the closest section. `pairs`, `pungs` and `kongs` count the faces held at
 * least two, three and four times, jokers apart: a kong is also a pung and a pair. `inARow` is the length of the
 * longest run of consecutive numbers in one suit. `likeNumbers` is the most tiles of one number over two or three suits,
 * 0 where no number is held in two suits. `toGo` is tiles to go on the card.
 */
export const AMOUNTS = [
  'jokers',
  'flowers',
  'pairs',
  'pungs',
  'kongs',
  'inARow',
  'likeNumbers',
  'toGo',
] as const;
export type AmountName = (typeof AMOUNTS)[number];
export type ConstraintPart = AmountName | 'section';

export const CONSTRAINT_PARTS: readonly ConstraintPart[] = [...AMOUNTS, 'section'];

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Beyond every rack, so that an open end needs no case of its own. */
const OPEN_END = 14;

/** The parts that the constraint sets. */
export function partsOf(constraint: Constraint): ConstraintPart[] {
  return CONSTRAINT_PARTS.filter((part) => constraint[part] !== undefined);
}

export function rangeOf(amount: Amount | undefined): Range {
  if (amount === undefined) return { from: 0, to: OPEN_END };
  if (typeof amount === 'number') return { from: amount, to: amount };
  return { from: 'from' in amount ? amount.from : 0, to: amount.to ?? OPEN_END };
}

export function inRange(value: number, { from, to }: Range): boolean {
  return value >= from && value <= to;
}

/** The longest run of consecutive numbers in one suit of this rack, 0–9. */
export function inARow(rack: Bag): number {
  let longest = 0;
  let row = 0;
  for (let face = 0; face < 27; face++) {
    if (face % 9 === 0) row = 0;
    row = rack[face]! > 0 ? row + 1 : 0;
    if (row > longest) longest = row;
  }
  return longest;
}

/** The most tiles of one number over two or three suits, 0 or 2–12. */
export function likeNumbers(rack: Bag): number {
  let most = 0;
  for (let place = 0; place < NUMBERS.length; place++) {
    const [bam, crak, dot] = [rack[place]!, rack[place + 9]!, rack[place + 18]!];
    const tiles = bam + crak + dot;
    if (tiles > most && tiles > Math.max(bam, crak, dot)) most = tiles;
  }
  return most;
}

const NAMES: Readonly<Record<AmountName, readonly [string, string]>> = {
  jokers: ['joker', 'jokers'],
  flowers: ['flower', 'flowers'],
  pairs: ['pair', 'pairs'],
  pungs: ['pung', 'pungs'],
  kongs: ['kong', 'kongs'],
  inARow: ['tile in a row in one suit', 'tiles in a row in one suit'],
  likeNumbers: ['like number', 'like numbers'],
  toGo: ['tile to go', 'tiles to go'],
};

/** One part of a constraint in words: "no pair", "1 joker", "2 to 4 flowers", "at most 5 tiles to go". */
export function partText(
  constraint: Constraint,
  part: ConstraintPart,
  sections: ReadonlyMap<string, string>,
): string {
  if (part === 'section') {
    return `"${sections.get(constraint.section ?? '') ?? constraint.section}" as the closest section`;
  }
  const { from, to } = rangeOf(constraint[part]);
  const [one, several] = NAMES[part];
  const name = (count: number): string => (count === 1 ? one : several);
  if (to === 0) return part === 'inARow' ? 'no numbered tile' : `no ${one}`;
  if (from === to) return `${from} ${name(from)}`;
  if (to >= OPEN_END) return `${from} ${name(from)} or more`;
  return from === 0 ? `at most ${to} ${name(to)}` : `${from} to ${to} ${several}`;
}
