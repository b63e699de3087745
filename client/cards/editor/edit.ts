// What can be done to a card in the editor: each edit takes a card and returns the changed one.
import {
  CARD_LIMITS,
  type CardFile,
  type CardPattern,
  freeId,
  type PatternBody,
} from '../../../shared-engine/index.ts';

const NEW_PATTERN: PatternBody = { points: 25, concealed: false, groups: [] };

/** A new hand behind the one named, or at the end of its section; null where the card is full. */
export function withNewPattern(
  card: CardFile,
  section: string,
  behind: string | null,
  body: PatternBody = NEW_PATTERN,
): { readonly card: CardFile; readonly id: string } | null {
  if (card.patterns.length >= CARD_LIMITS.patterns) return null;
  const id = freeId(section, new Set(card.patterns.map((pattern) => pattern.id)));
  const last = card.patterns.findLastIndex((pattern) => pattern.section === section);
  const place = behind === null ? last : card.patterns.findIndex((pattern) => pattern.id === behind);
  const patterns = [...card.patterns];
  patterns.splice(place < 0 ? patterns.length : place + 1, 0, { id, section, ...body });
  return { card: { ...card, patterns }, id };
}

export function withPattern(card: CardFile, id: string, body: PatternBody): CardFile {
  return {
    ...card,
    patterns: card.patterns.map((pattern) =>
      pattern.id === id ? { id, section: pattern.section, ...body } : pattern,
    ),
  };
}

export function withoutPattern(card: CardFile, id: string): CardFile {
  return { ...card, patterns: card.patterns.filter((pattern) => pattern.id !== id) };
}

/** Without hands that nothing was laid or typed for, apart from the one named: each was begun and left again. */
export function withoutEmpty(card: CardFile, keep: string | null): CardFile {
  const patterns = card.patterns.filter(({ id, groups }) => groups.length > 0 || id === keep);
  return patterns.length === card.patterns.length ? card : { ...card, patterns };
}

/** One place up or down in its section, and over its edge into the next one. */
export function movedPattern(card: CardFile, id: string, step: -1 | 1): CardFile {
  const pattern = card.patterns.find((known) => known.id === id);
  if (!pattern) return card;
  const own = card.patterns.filter(({ section }) => section === pattern.section);
  const neighbor = own[own.indexOf(pattern) + step];
  if (neighbor) return { ...card, patterns: swapped(card.patterns, pattern, neighbor) };
  const place = card.sections.findIndex((section) => section.id === pattern.section);
  const next = card.sections[place + step];
  if (!next) return card;
  const moved: CardPattern = { ...pattern, section: next.id };
  const others = card.patterns.filter((known) => known !== pattern);
  return { ...card, patterns: step < 0 ? [...others, moved] : [moved, ...others] };
}

export function withSection(
  card: CardFile,
  name: string,
): { readonly card: CardFile; readonly id: string } | null {
  if (card.sections.length >= CARD_LIMITS.sections) return null;
  const id = freeId('section', new Set(card.sections.map((section) => section.id)));
  return { card: { ...card, sections: [...card.sections, { id, name }] }, id };
}

export function renamedSection(card: CardFile, id: string, name: string): CardFile {
  return { ...card, sections: card.sections.map((section) => (section.id === id ? { id, name } : section)) };
}

export function movedSection(card: CardFile, id: string, step: -1 | 1): CardFile {
  const place = card.sections.findIndex((section) => section.id === id);
  const [own, other] = [card.sections[place], card.sections[place + step]];
  return own && other ? { ...card, sections: swapped(card.sections, own, other) } : card;
}

/** With its hands. */
export function withoutSection(card: CardFile, id: string): CardFile {
  return {
    ...card,
    sections: card.sections.filter((section) => section.id !== id),
    patterns: card.patterns.filter(({ section }) => section !== id),
  };
}

/** `text` as typed; anything that is no year takes the year away. */
export function withYear(card: CardFile, text: string): CardFile {
  const year = /^[1-9]\d{3}$/.test(text) ? Number(text) : undefined;
  return { ...card, parameters: year === undefined ? {} : { year } };
}

function swapped<T>(list: readonly T[], one: T, other: T): T[] {
  return list.map((item) => (item === one ? other : item === other ? one : item));
}
