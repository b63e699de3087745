// Fetches the card of a table and makes it ready to be compared with racks; loaded only when a card is opened.
import { type CardFile, type CompiledCard, cardPath, compileCard } from '../../shared-engine/index.ts';
import { parsedCard } from './own-card-file.ts';

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
    return parsedCard(await response.json());
  } catch {
    return null;
  }
}

export { houseCard } from '../../shared-engine/index.ts';
export { ownCardFile } from './own-card-file.ts';
