// What a card comes to: how many of its hands are ready, in how many ways, and the part that tables can play with.
import { areTooMany, type CardFile, type PatternReport, playablePart } from '../../../shared-engine/index.ts';
import { reportOf, wholeReportOf } from './counting.ts';
import { MY_CARDS } from './strings.ts';

/** Where a card has too many ways, its three widest hands are named, as far as they have so many ways. */
const MOST_NAMED = 3;
const WIDE = 1_000;

export interface CardTotals {
  /** Hands without a problem, and all hands on the card. */
  readonly ready: number;
  readonly all: number;
  /** Hands that are still being worked out. */
  readonly uncounted: number;
  /** Ways to make the ready ones. */
  readonly ways: number;
  /** Where the card has more ways than it may: its hands with the most of them. */
  readonly widest: readonly { readonly name: string; readonly ways: number }[];
}

/** A hand that was begun and is empty does not count: it goes when another is opened. */
export function totalsOf(card: CardFile): CardTotals {
  const begun = card.patterns.filter(({ groups }) => groups.length > 0);
  const reports = begun.map((pattern) => reportOf(pattern, card.parameters));
  return {
    ready: reports.filter(({ isCounted, problems }) => isCounted && problems.length === 0).length,
    uncounted: reports.filter(({ isCounted }) => !isCounted).length,
    all: reports.length,
    ways: reports.reduce((sum, { hands }) => sum + hands, 0),
    widest: areTooMany(reports) ? widestHands(card, begun, reports) : [],
  };
}

function widestHands(
  card: CardFile,
  begun: CardFile['patterns'],
  reports: readonly PatternReport[],
): CardTotals['widest'] {
  const named = handNames(card);
  return begun
    .map(({ id }, nth) => ({ name: named(id), ways: reports[nth]!.choices }))
    .sort((a, b) => b.ways - a.ways)
    .filter(({ ways }, nth) => nth === 0 || ways >= WIDE)
    .slice(0, MOST_NAMED);
}

/** A hand is named by its section and its place there: ids are for files. */
export function handNames({ sections, patterns }: CardFile): (id: string) => string {
  const names = new Map(
    sections.flatMap((section) =>
      patterns
        .filter((pattern) => pattern.section === section.id)
        .map(({ id }, nth) => [id, `${section.name} ${nth + 1}`] as const),
    ),
  );
  return (id) => names.get(id) ?? id;
}

/** The card itself where all of it can be played, the part that can be, or null. */
export function playable(card: CardFile): CardFile | null {
  const reports = card.patterns.map((pattern) => wholeReportOf(pattern, card.parameters));
  const part = playablePart(card, reports);
  if (part === null) return null;
  const isWhole =
    part.patterns.length === card.patterns.length &&
    part.sections.length === card.sections.length &&
    [card, ...card.sections].every(({ name }) => name.trim() !== '');
  return isWhole ? card : named(part);
}

/** Tables need names that can be read. */
function named(card: CardFile): CardFile {
  const or = (name: string, otherwise: string) => (name.trim() === '' ? otherwise : name);
  return {
    ...card,
    name: or(card.name, MY_CARDS.untitled),
    sections: card.sections.map(({ id, name }, nth) => ({
      id,
      name: or(name, MY_CARDS.sectionName(nth + 1)),
    })),
  };
}
