// The card that somebody has chosen for new tables, for what they practice without one.
import { type CardFile, type CompiledCard, compileCard, HOUSE_CARD } from '../../shared-engine/index.ts';
import { cardOnDevice, houseCard } from '../cards/load-card.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { cardForTables } from '../storage/own-cards.ts';

/** The house card where none is chosen, or where the chosen one has no hand yet. */
export function chosenCard(key: string | null): CompiledCard {
  const file = chosenCardFile(key);
  return file === HOUSE_CARD ? houseCard() : compileCard(file);
}

/** The same as it was written. */
export function chosenCardFile(key: string | null): CardFile {
  return cardOnDevice(cardForTables(lastingStorage, key)) ?? HOUSE_CARD;
}
