// The card that somebody has chosen for new tables, for what they practice without one.
import { type CompiledCard, compileCard } from '../../shared-engine/index.ts';
import { cardOnDevice, houseCard } from '../cards/load-card.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { cardForTables } from '../storage/own-cards.ts';

/** The house card where none is chosen, or where the chosen one has no hand yet. */
export function chosenCard(key: string | null): CompiledCard {
  const file = cardOnDevice(cardForTables(lastingStorage, key));
  return file ? compileCard(file) : houseCard();
}
