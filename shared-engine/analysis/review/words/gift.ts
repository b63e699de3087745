// What a pass gives the neighbour, by the rules of thumb (common practice, no source).
import { GIFT_GRADES, type GiftGrade } from '../../../policy/gift.ts';
import type { Alternative } from '../review.ts';

const PHRASES: Readonly<Record<GiftGrade, string>> = {
  pair: 'gave a pair, by the rule of thumb the most dangerous gift',
  'like-numbers': 'gave like numbers, by the rule of thumb nearly as dangerous a gift as a pair',
  neighbours: 'gave tiles of one suit that belong together, which the rule of thumb would split up',
  flower: 'gave a flower, which the rule of thumb would keep',
  'nothing-special': 'gave nothing that the rules of thumb warn about',
};

/** The gift and what the rule of thumb says of it. */
export function giftPhrase({ tiles, gift }: Alternative): string {
  const pung = tiles.length === 3 && new Set(tiles).size === 1;
  return pung ? 'gave a whole pung, by the rule of thumb more dangerous even than a pair' : PHRASES[gift];
}

/** The gift alone. */
export const GIFT_NAMES: Readonly<Record<GiftGrade, string>> = {
  pair: 'a pair',
  'like-numbers': 'like numbers',
  neighbours: 'tiles of one suit that belong together',
  flower: 'a flower',
  'nothing-special': 'nothing special',
};

export function isSafer(gift: GiftGrade, than: GiftGrade): boolean {
  return GIFT_GRADES.indexOf(gift) < GIFT_GRADES.indexOf(than);
}
