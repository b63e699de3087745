// My cards: what is on this device, and everything that can be done with a card as a whole.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  CARD_FORMAT,
  type CardFile,
  cardDraftSchema,
  freeId,
  HOUSE_CARD,
} from '../../../shared-engine/index.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import {
  type CardEntry,
  type CardStoring,
  changeEntry,
  listOwnCards,
  readOwnCard,
  removeOwnCard,
  storeOwnCard,
} from '../../storage/own-cards.ts';
import { playable } from './reports.ts';
import { MY_CARDS } from './strings.ts';

export interface OpenCard {
  readonly card: CardFile;
  readonly revision: string;
}

export interface CardShelf {
  readonly entries: ReadonlySignal<readonly CardEntry[]>;
  /** Null for a key that holds no card of this format. */
  open(key: string): OpenCard | null;
  /** Puts a card on the shelf under a name that no other has; null where the browser refuses to store it. */
  add(card: CardFile): CardEntry | null;
  /** Stores a changed card; the new revision, or why it is not stored. */
  store(
    key: string,
    card: CardFile,
    before: string,
  ): { readonly revision: string } | Exclude<CardStoring, 'stored'>;
  /** Whether another card is called so, as far as a reader can tell. */
  isTaken(name: string, key: string): boolean;
  archive(entry: CardEntry, archived: boolean): void;
  /** Takes a card off the shelf; the function returned puts it back. */
  remove(entry: CardEntry): () => boolean;
  refresh(): void;
}

export function openShelf(storage: TextStorage, newId: () => string): CardShelf {
  const entries = signal(listOwnCards(storage));
  const refresh = () => {
    entries.value = listOwnCards(storage);
  };

  function open(key: string): OpenCard | null {
    const stored = readOwnCard(storage, key);
    const card = stored && cardDraftSchema.safeParse(stored.card);
    return stored && card?.success ? { card: card.data, revision: stored.revision } : null;
  }

  function write(entry: CardEntry, card: CardFile, before: string | null) {
    const revision = newId();
    const stored = { revision, card, playable: playable(card) };
    const result = storeOwnCard(storage, summary(entry, card), stored, before);
    refresh();
    return result === 'stored' ? { revision } : result;
  }

  /** Of all cards but this one. */
  const namesBeside = (key: string | null): ReadonlySet<string> =>
    new Set(
      [HOUSE_CARD, ...listOwnCards(storage).filter((entry) => entry.key !== key)].map(({ name }) =>
        likeness(name),
      ),
    );

  return {
    entries,
    open,
    refresh,
    isTaken: (name, key) => namesBeside(key).has(likeness(name)),
    add(card) {
      const name = freeName(card.name.trim() || MY_CARDS.untitled, namesBeside(null));
      const entry = summary({ ...NEW_ENTRY, key: newId() }, { ...card, name });
      const own = { ...card, name, id: freeId(name, RESERVED) };
      return typeof write(entry, own, null) === 'object' ? entry : null;
    },
    store(key, card, before) {
      const entry = listOwnCards(storage).find((known) => known.key === key);
      return write(entry ?? { ...NEW_ENTRY, key }, card, before);
    },
    archive(entry, archived) {
      changeEntry(storage, { ...entry, archived });
      refresh();
    },
    remove(entry) {
      const stored = readOwnCard(storage, entry.key);
      removeOwnCard(storage, entry.key);
      refresh();
      return () => {
        const back = stored !== null && storeOwnCard(storage, entry, stored, null) === 'stored';
        refresh();
        return back;
      };
    },
  };
}

/** A new card, with one section to begin in. */
export function emptyCard(name: string, section: string): CardFile {
  return {
    format: CARD_FORMAT,
    id: 'new',
    name,
    parameters: {},
    sections: [{ id: 'section-1', name: section }],
    patterns: [],
  };
}

/** Next year's card: the sections of this one without their hands, the year one on. */
export function nextYears(card: CardFile): CardFile {
  const { year } = card.parameters;
  if (year === undefined) return { ...card, patterns: [] };
  const name = card.name.replace(String(year), String(year + 1));
  return { ...card, name, parameters: { year: year + 1 }, patterns: [] };
}

const NEW_ENTRY = {
  key: '',
  name: '',
  sections: 0,
  patterns: 0,
  used: null,
  archived: false,
  mayShare: false,
} as const;
/** The id by which tables know the house card. */
const RESERVED: ReadonlySet<string> = new Set(['house']);

function summary(entry: CardEntry, { name, sections, patterns }: CardFile): CardEntry {
  return { ...entry, name, sections: sections.length, patterns: patterns.length };
}

/** `Tuesday club`, `Tuesday club (2)`, …: two cards of one name could not be told apart at a table. */
function freeName(wish: string, taken: ReadonlySet<string>): string {
  if (!taken.has(likeness(wish))) return wish;
  const base = wish.replace(/ \(\d+\)$/, '').slice(0, 74);
  for (let nth = 2; ; nth++) {
    const name = `${base} (${nth})`;
    if (!taken.has(likeness(name))) return name;
  }
}

/** Names that differ in nothing else than capitals and blanks are read as one. */
function likeness(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}
