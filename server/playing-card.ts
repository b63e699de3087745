// The cards that tables and classes play with: one object for equal files, for as long as anybody uses it.
import { createHash } from 'node:crypto';
import { type CardFile, cardFileSchema, HOUSE_CARD } from '../shared-engine/index.ts';
import type { CardChoice, PlayingCard } from './ports.ts';

/** Names the house card where a card is named by a hash of its file. */
export const HOUSE_CARD_KEY = 'house';

const house: PlayingCard = { key: HOUSE_CARD_KEY, file: HOUSE_CARD };

/**
 * Cards in use, by key. Held weakly: whoever plays with a card holds it, however many others come and go, and a card
 * that nobody plays with any more takes no memory, whatever was forgotten to be said.
 */
const inUse = new Map<string, WeakRef<PlayingCard>>();
const byFile = new WeakMap<CardFile, PlayingCard>();

/** Equal files give one card. Takes files that have been checked. */
export function playingCard(choice: CardChoice): PlayingCard {
  if (choice.kind === 'house') return house;
  const known = byFile.get(choice.file);
  if (known) return known;
  const key = cardKeyOf(choice.file);
  const card = inUse.get(key)?.deref() ?? added({ key, file: choice.file });
  byFile.set(choice.file, card);
  return card;
}

/**
 * The file of a stored room or class, or null where it does not fit the format. The rooms of a class share one object:
 * it is parsed once and held once.
 */
export function storedCardFile(json: unknown): CardFile | null {
  const known = inUse.get(cardKeyOf(json))?.deref();
  if (known) return known.file;
  const parsed = cardFileSchema.safeParse(json);
  return parsed.success ? playingCard({ kind: 'file', file: parsed.data }).file : null;
}

/** A hash of everything in a card file, whether or not it has been checked. */
export function cardKeyOf(json: unknown): string {
  return createHash('sha256')
    .update(JSON.stringify(json) ?? '')
    .digest('hex');
}

function added(card: PlayingCard): PlayingCard {
  for (const [key, other] of inUse) if (other.deref() === undefined) inUse.delete(key);
  inUse.set(card.key, new WeakRef(card));
  return card;
}
