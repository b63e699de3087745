// What each hand of a card comes to, worked out once for each hand: an edit changes one hand and leaves the others.
import {
  type CardFile,
  type CardPattern,
  type PatternReport,
  patternReport,
  playablePart,
} from '../../../shared-engine/index.ts';
import { MY_CARDS } from './strings.ts';

const known = new WeakMap<
  CardPattern,
  { readonly year: number | undefined; readonly report: PatternReport }
>();

export function reportOf(pattern: CardPattern, parameters: CardFile['parameters']): PatternReport {
  const last = known.get(pattern);
  if (last && last.year === parameters.year) return last.report;
  const report = patternReport(pattern, parameters);
  known.set(pattern, { year: parameters.year, report });
  return report;
}

export interface CardTotals {
  /** Hands without a problem, and all hands on the card. */
  readonly ready: number;
  readonly all: number;
  /** Ways to make the ready ones. */
  readonly ways: number;
}

export function totalsOf(card: CardFile): CardTotals {
  const reports = card.patterns.map((pattern) => reportOf(pattern, card.parameters));
  return {
    ready: reports.filter(({ problems }) => problems.length === 0).length,
    all: reports.length,
    ways: reports.reduce((sum, { hands }) => sum + hands, 0),
  };
}

/** The card itself where all of it can be played, the part that can be, or null. */
export function playable(card: CardFile): CardFile | null {
  const reports = card.patterns.map((pattern) => reportOf(pattern, card.parameters));
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
