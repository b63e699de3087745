// The cards of one's own on this device: a list of them, and one text a card, which another tab may change meanwhile.
import type { TextStorage } from './browser-storage.ts';

/** What the list knows of a card without reading it. */
export interface CardEntry {
  readonly key: string;
  readonly name: string;
  readonly sections: number;
  readonly patterns: number;
  /** Day of the last table with it, as the browser writes days; null for none. */
  readonly used: string | null;
  readonly archived: boolean;
  /** Whether this device's owner has said that the card may be passed on. */
  readonly mayShare: boolean;
}

/** A card as it is stored; what it is, its reader checks. */
export interface StoredCard {
  /** Another one after each change, in whatever tab. */
  readonly revision: string;
  readonly card: unknown;
  /** The part of it that tables can play with; null while there is none. */
  readonly playable: unknown;
}

export type CardStoring = 'stored' | 'changed-elsewhere' | 'removed-elsewhere' | 'refused';

const LIST = 'own-cards';

export const ownCardKey = (key: string): string => `own-card.${key}`;

export function listOwnCards(storage: TextStorage): readonly CardEntry[] {
  const list = parsed(storage.read(LIST));
  return Array.isArray(list) ? list.flatMap((entry: unknown) => entryOf(entry) ?? []) : [];
}

export function readOwnCard(storage: TextStorage, key: string): StoredCard | null {
  const stored = parsed(storage.read(ownCardKey(key)));
  if (typeof stored !== 'object' || stored === null || !('revision' in stored) || !('card' in stored))
    return null;
  const { revision, card } = stored;
  if (typeof revision !== 'string') return null;
  return { revision, card, playable: 'playable' in stored ? stored.playable : card };
}

/**
 * Stores a card and its entry. `before` is the revision that the change was made on, null for a new card; where another
 * tab has stored something since, nothing is written, and nothing of a card that is refused stays behind.
 */
export function storeOwnCard(
  storage: TextStorage,
  entry: CardEntry,
  stored: StoredCard,
  before: string | null,
): CardStoring {
  const present = readOwnCard(storage, entry.key)?.revision ?? null;
  if (present !== before) return present === null ? 'removed-elsewhere' : 'changed-elsewhere';
  const { revision, card, playable } = stored;
  // A whole card is its own playable part and is written once.
  const text = JSON.stringify(playable === card ? { revision, card } : { revision, card, playable });
  const place = ownCardKey(entry.key);
  const earlier = storage.read(place);
  if (!storage.write(place, text)) return 'refused';
  if (changeEntry(storage, entry)) return 'stored';
  // Its revision would be one that nobody was told, so that every later change looked like another tab's.
  if (earlier === null) storage.remove(place);
  else storage.write(place, earlier);
  return 'refused';
}

/** Puts the entry in the place of the one with its key, or behind the others. */
export function changeEntry(storage: TextStorage, entry: CardEntry): boolean {
  const list = listOwnCards(storage);
  const isKnown = list.some(({ key }) => key === entry.key);
  const next = isKnown ? list.map((other) => (other.key === entry.key ? entry : other)) : [...list, entry];
  return storage.write(LIST, JSON.stringify(next));
}

export function removeOwnCard(storage: TextStorage, key: string): void {
  storage.write(LIST, JSON.stringify(listOwnCards(storage).filter((entry) => entry.key !== key)));
  storage.remove(ownCardKey(key));
}

/** What a new table is opened with: the part of the chosen card that can be played; null for the house card. */
export function cardForTables(storage: TextStorage, key: string | null): unknown {
  return key === null ? null : (readOwnCard(storage, key)?.playable ?? null);
}

/** The card of this key where tables cannot play with it: its name, empty for one that is not here; null where they can. */
export function unplayable(storage: TextStorage, key: string | null): string | null {
  if (key === null || cardForTables(storage, key) !== null) return null;
  return listOwnCards(storage).find((entry) => entry.key === key)?.name ?? '';
}

export function markCardUsed(storage: TextStorage, key: string | null, day: string): void {
  const entry = listOwnCards(storage).find((known) => known.key === key);
  if (entry) changeEntry(storage, { ...entry, used: day });
}

export function markMayShare(storage: TextStorage, key: string): void {
  const entry = listOwnCards(storage).find((known) => known.key === key);
  if (entry) changeEntry(storage, { ...entry, mayShare: true });
}

function entryOf(entry: unknown): CardEntry | null {
  if (typeof entry !== 'object' || entry === null) return null;
  const {
    key,
    name,
    sections,
    patterns,
    used,
    archived,
    mayShare,
  }: Partial<Record<keyof CardEntry, unknown>> = entry;
  if (typeof key !== 'string' || typeof name !== 'string') return null;
  if (typeof sections !== 'number' || typeof patterns !== 'number') return null;
  return {
    key,
    name,
    sections,
    patterns,
    used: typeof used === 'string' ? used : null,
    archived: archived === true,
    mayShare: mayShare === true,
  };
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
