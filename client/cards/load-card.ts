// Fetches the card of a table and makes it ready to be compared with racks; loaded only when a card is opened.
import {
  type CardFile,
  type CompiledCard,
  cardPath,
  compileCard,
  parseCard,
} from '../../shared-engine/index.ts';

/** Null when the card cannot be had just now. */
export async function loadCard(code: string): Promise<CompiledCard | null> {
  const file = await loadCardFile(code);
  return file && compileCard(file);
}

/** The same as it was written. */
export async function loadCardFile(code: string): Promise<CardFile | null> {
  try {
    const response = await fetch(cardPath(code), { credentials: 'same-origin' });
    if (!response.ok) return null;
    return cardOnDevice(await response.json());
  } catch {
    return null;
  }
}

/** A card as the browser has stored it; null where it is none. */
export function cardOnDevice(json: unknown): CardFile | null {
  const parsed = parseCard(json);
  return parsed.ok ? parsed.card : null;
}

export { houseCard } from '../../shared-engine/index.ts';
