// A wish as numbers: which traits of a rack it speaks of, how each is counted, and in which words it is said.
import type { Bag } from '../rules/tiles/bag.ts';
import { NUMBERS } from '../rules/tiles/face.ts';
import type { Amount, Wish } from './format.ts';

/**
 * What a wish can speak of, besides the nearest family. `pairs`, `pungs` and `kongs` count the faces held at
 * least two, three and four times, jokers apart: a kong is also a pung and a pair. `inARow` is the length of the
 * longest row of neighbours in one suit. `likeNumbers` is the most tiles of one number over two or three suits,
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
export type WishPart = AmountName | 'family';

export const WISH_PARTS: readonly WishPart[] = [...AMOUNTS, 'family'];

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Beyond every rack, so that an open end needs no case of its own. */
const MOST = 14;

/** The parts of a wish that are wished for. */
export function partsOf(wish: Wish): WishPart[] {
  return WISH_PARTS.filter((part) => wish[part] !== undefined);
}

export function rangeOf(amount: Amount | undefined): Range {
  if (amount === undefined) return { from: 0, to: MOST };
  if (typeof amount === 'number') return { from: amount, to: amount };
  return { from: 'from' in amount ? amount.from : 0, to: amount.to ?? MOST };
}

export function within(value: number, { from, to }: Range): boolean {
  return value >= from && value <= to;
}

/** The longest row of neighbours that any suit of this rack holds, 0–9. */
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

/** One part of a wish as a sentence says it: "no pair", "1 joker", "2 to 4 flowers", "at most 5 tiles to go". */
export function partInWords(wish: Wish, part: WishPart, families: ReadonlyMap<string, string>): string {
  if (part === 'family') return `nearest to the family "${families.get(wish.family ?? '') ?? wish.family}"`;
  const { from, to } = rangeOf(wish[part]);
  const [one, several] = NAMES[part];
  const name = (count: number): string => (count === 1 ? one : several);
  if (to === 0) return part === 'inARow' ? 'no numbered tile' : `no ${one}`;
  if (from === to) return `${from} ${name(from)}`;
  if (to >= MOST) return `${from} ${name(from)} or more`;
  return from === 0 ? `at most ${to} ${name(to)}` : `${from} to ${to} ${several}`;
}
