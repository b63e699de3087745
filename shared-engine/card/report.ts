// What a card in the making comes to: each pattern's tiles, hands and problems, and the part that can be played already.
import { countOfAssignments, valuesOf } from './assignment.ts';
import { distinctHandsOf } from './compile.ts';
import { CARD_LIMITS, type CardFile, type CardPattern } from './format.ts';
import type { CardProblem } from './problem.ts';
import { countsHands, handProblems, patternProblems, tooManyHandsProblem } from './semantics.ts';

export interface PatternReport {
  /** Tiles in its groups; a pattern needs 14. */
  readonly tiles: number;
  /** Hands that can be made of it; 0 while it has a problem. */
  readonly hands: number;
  readonly problems: readonly CardProblem[];
}

/** One pattern by itself; its section is taken to exist. */
export function patternReport(pattern: CardPattern, parameters: CardFile['parameters']): PatternReport {
  const tiles = pattern.groups.reduce((sum, { size }) => sum + size, 0);
  const problems = patternProblems(pattern, new Set([pattern.section]), parameters);
  if (problems.every(({ code }) => countsHands(code))) {
    const choices = countOfAssignments(valuesOf(pattern));
    if (choices > CARD_LIMITS.hands) problems.push(tooManyHandsProblem(pattern.id));
    else problems.push(...handProblems(pattern, parameters));
  }
  const hands = problems.length > 0 ? 0 : distinctHandsOf(pattern, parameters).length;
  return { tiles, hands, problems };
}

/**
 * The card without what cannot be played yet: patterns with problems, and sections left without a pattern. Null where
 * nothing is left. `reports` has one for each pattern, in their order.
 */
export function playablePart(card: CardFile, reports: readonly PatternReport[]): CardFile | null {
  const patterns = card.patterns.filter((_, index) => reports[index]!.problems.length === 0);
  const used = new Set(patterns.map(({ section }) => section));
  const sections = card.sections.filter(({ id }) => used.has(id));
  return patterns.length === 0 ? null : { ...card, sections, patterns };
}
