// The house card: eight sections, each a way to build a hand, and the patterns in them.
import { compileCard } from '../compile.ts';
import type { CompiledCard } from '../compiled.ts';
import { CARD_FORMAT, type CardFile } from '../format.ts';
import { BOOKENDS } from './bookends.ts';
import { GARDEN } from './garden.ts';
import { MATCHING_DRAGONS } from './matching-dragons.ts';
import { ONE_SUIT } from './one-suit.ts';
import { POINTS } from './points.ts';
import { STAIRS } from './stairs.ts';
import { THREE_SUITS } from './three-suits.ts';
import { TWIN_SUITS } from './twin-suits.ts';
import { TWO_WINDS } from './two-winds.ts';

export const HOUSE_CARD: CardFile = {
  format: CARD_FORMAT,
  id: 'house',
  name: 'House card',
  parameters: {},
  sections: [
    { id: 'one-suit', name: 'One suit' },
    { id: 'twin-suits', name: 'Twin suits' },
    { id: 'three-suits', name: 'Three suits' },
    { id: 'stairs', name: 'Stairs' },
    { id: 'bookends', name: 'Bookends' },
    { id: 'two-winds', name: 'Two winds' },
    { id: 'matching-dragons', name: 'Matching dragons' },
    { id: 'garden', name: 'Garden' },
  ],
  patterns: [ONE_SUIT, TWIN_SUITS, THREE_SUITS, STAIRS, BOOKENDS, TWO_WINDS, MATCHING_DRAGONS, GARDEN]
    .flat()
    .map((pattern) => ({ ...pattern, points: POINTS[pattern.id]! })),
};

let compiled: CompiledCard | null = null;

/** The house card, compiled when first asked for. */
export function houseCard(): CompiledCard {
  compiled ??= compileCard(HOUSE_CARD);
  return compiled;
}
