// The card that somebody has chosen for new tables, for what they practice without one.
import {
  type CardFile,
  type CompiledCard,
  compileCard,
  HOUSE_CARD,
  houseCard,
} from '../../shared-engine/index.ts';
import { ownCardFile } from '../cards/own-card-file.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { unplayable } from '../storage/own-cards.ts';
import { CARD_SELECT } from '../ui/strings.ts';

export interface ChosenCard {
  readonly card: CompiledCard;
  /** The same as it was written. */
  readonly file: CardFile;
  /** Said where it is the house card instead of the one chosen; null where it is the one chosen. */
  readonly instead: string | null;
}

export function chosenCard(key: string | null): ChosenCard {
  const file = ownCardFile(key);
  if (file) return { card: compileCard(file), file, instead: null };
  const name = unplayable(lastingStorage, key);
  const instead = name === null ? null : CARD_SELECT.unplayable(name);
  return { card: houseCard(), file: HOUSE_CARD, instead };
}
