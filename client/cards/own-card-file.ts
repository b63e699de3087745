// A card of one's own as tables play with it, from this device.
import { type CardFile, parseCard } from '../../shared-engine/index.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { cardForTables } from '../storage/own-cards.ts';

/** Null for the house card, and where none can be played under this key. */
export function ownCardFile(key: string | null): CardFile | null {
  return parsedCard(cardForTables(lastingStorage, key));
}

/** A card as somebody has stored or sent it; null where it is none. */
export function parsedCard(json: unknown): CardFile | null {
  const parsed = parseCard(json);
  return parsed.ok ? parsed.card : null;
}
