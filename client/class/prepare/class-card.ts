// The card of a class while it is prepared: the house card, one of this device, or one from a file.
import { type Signal, useSignal } from '@preact/signals';
import {
  type CardFile,
  compileCard,
  type DrillFile,
  houseCard,
  parseCard,
} from '../../../shared-engine/index.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { cardForTables, listOwnCards, markMayShare, unplayable } from '../../storage/own-cards.ts';
import { CARD_SELECT } from '../../ui/strings.ts';
import type { ClassCard } from './deal-editor.tsx';
import { PREPARE } from './strings.ts';

const HOUSE: ClassCard = { file: null, sections: houseCard().sections };

/** A card that came in a file, and in which. */
export interface BroughtCard {
  readonly name: string;
  readonly by: 'file' | 'drill';
  readonly mayShare: boolean;
}

interface CardSignals {
  /** Key of the card on this device; null for another. */
  readonly ownCard: Signal<string | null>;
  readonly card: Signal<ClassCard>;
  readonly problems: Signal<readonly string[]>;
}

const classCardOf = (file: CardFile | null): ClassCard =>
  file === null ? HOUSE : { file, sections: compileCard(file).sections };

/** A card of this device; where it cannot be played, the house card and why. */
function ownClassCard(key: string | null) {
  const name = unplayable(lastingStorage, key);
  const parsed = name === null && key !== null ? parseCard(cardForTables(lastingStorage, key)) : null;
  const file = parsed?.ok ? parsed.card : null;
  return {
    key: file === null ? null : key,
    card: classCardOf(file),
    problems: name === null ? [] : [CARD_SELECT.unplayable(name)],
  };
}

/** What a draft starts with: a card of this device, or else the one that its file carries. */
export function firstCard(key: string | null, carried: DrillFile['card']) {
  const own = ownClassCard(key);
  if (own.key !== null || carried === undefined || carried === 'house') return { ...own, brought: null };
  const brought: BroughtCard = { name: carried.name, by: 'drill', mayShare: false };
  return { ...own, card: classCardOf(carried), brought };
}

export function useClassCard({ ownCard, card, problems }: CardSignals, first: BroughtCard | null) {
  const brought = useSignal(first);
  /** Counts cards that were chosen elsewhere than in the field for files, which then forgets its own. */
  const elsewhere = useSignal(0);

  function takeOwn(key: string | null) {
    const own = ownClassCard(key);
    [brought.value, ownCard.value, card.value, problems.value] = [null, own.key, own.card, own.problems];
    elsewhere.value++;
  }

  function bring(file: CardFile, by: BroughtCard['by']) {
    ownCard.value = null;
    card.value = classCardOf(file);
    brought.value = { name: file.name, by, mayShare: false };
    if (by === 'drill') elsewhere.value++;
  }

  /** Why the card cannot be used, or null. */
  function takeCard(json: unknown): string | null {
    [brought.value, ownCard.value, card.value, problems.value] = [null, null, HOUSE, []];
    const parsed = json === null ? null : parseCard(json);
    if (parsed?.ok) bring(parsed.card, 'file');
    if (parsed === null || parsed.ok) return null;
    problems.value = parsed.problems.map(({ message }) => message);
    return PREPARE.otherCard;
  }

  /** Name of the card about which nobody has said yet whether it may be passed on. */
  function asksAbout(): string | null {
    if (brought.value) return brought.value.mayShare ? null : brought.value.name;
    const entry = listOwnCards(lastingStorage).find(({ key }) => key === ownCard.value);
    return entry && !entry.mayShare ? entry.name : null;
  }

  function mayShare() {
    if (brought.value) brought.value = { ...brought.value, mayShare: true };
    else if (ownCard.value !== null) markMayShare(lastingStorage, ownCard.value);
  }

  return { brought, elsewhere, takeOwn, takeCard, bring, asksAbout, mayShare };
}
