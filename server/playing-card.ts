// The cards the server plays with: the house card, compiled once, and card files of those who open tables and classes.
import { createHash } from 'node:crypto';
import { LRUCache } from 'lru-cache';
import { compileCard, createSwarKernel, HOUSE_CARD, houseCard } from '../shared-engine/index.ts';
import type { CardChoice, PlayingCard } from './ports.ts';

/** Names the house card where a card is named by a hash of its file. */
export const HOUSE_CARD_KEY = 'house';

/** Cards held compiled besides the house card; each takes a few megabytes. A room holds its own anyway. */
const MAX_CARDS = 16;

const house: PlayingCard = {
  key: HOUSE_CARD_KEY,
  file: HOUSE_CARD,
  card: houseCard(),
  kernel: createSwarKernel(houseCard()),
};
const others = new LRUCache<string, PlayingCard>({ max: MAX_CARDS });

/** Equal files give one card, compiled once while it is held. */
export function playingCard(choice: CardChoice): PlayingCard {
  if (choice.kind === 'house') return house;
  const key = createHash('sha256').update(JSON.stringify(choice.file)).digest('hex');
  const known = others.get(key);
  if (known) return known;
  const card = compileCard(choice.file);
  const made = { key, file: choice.file, card, kernel: createSwarKernel(card) };
  others.set(key, made);
  return made;
}
