// What a card in the making comes to: each pattern's tiles, hands and problems, and the part that can be played already.
import { countOfAssignments, valuesOf } from './assignment.ts';
import { CARD_LIMITS, type CardFile, type CardPattern } from './format.ts';
import { layingHands } from './hands.ts';
import type { CardProblem } from './problem.ts';
import { countsHands, handProblems, patternProblems, tooManyHandsProblem } from './semantics.ts';

export interface PatternReport {
  /** Tiles in its groups; a pattern needs 14. */
  readonly tiles: number;
  /** Hands that can be made of it; 0 while it has a problem. */
  readonly hands: number;
  /** Choices of its values, which count for the bound of the card; 0 while it has a problem. */
  readonly choices: number;
  readonly problems: readonly CardProblem[];
}

/** One pattern by itself; its section is taken to exist. */
export function patternReport(pattern: CardPattern, parameters: CardFile['parameters']): PatternReport {
  const reporting = reportingPattern(pattern, parameters);
  let step = reporting.next();
  while (!step.done) step = reporting.next();
  return step.value;
}

/** The same in steps of a fraction of a millisecond: a pattern can leave so much open that a key would wait for it. */
export function* reportingPattern(
  pattern: CardPattern,
  parameters: CardFile['parameters'],
): Generator<undefined, PatternReport> {
  const tiles = pattern.groups.reduce((sum, { size }) => sum + size, 0);
  const problems = patternProblems(pattern, new Set([pattern.section]), parameters);
  if (!problems.every(({ code }) => countsHands(code))) return { tiles, hands: 0, choices: 0, problems };
  if (countOfAssignments(valuesOf(pattern)) > CARD_LIMITS.hands) {
    return { tiles, hands: 0, choices: 0, problems: [...problems, tooManyHandsProblem(pattern.id)] };
  }
  const hands = yield* layingHands(pattern, parameters);
  problems.push(...handProblems(pattern, hands, parameters));
  if (problems.length > 0) return { tiles, hands: 0, choices: 0, problems };
  return { tiles, hands: hands.count, choices: hands.choices, problems };
}

/** Whether patterns with these reports come to more hands than one card may have. */
export function areTooMany(reports: readonly PatternReport[]): boolean {
  return reports.reduce((sum, { choices }) => sum + choices, 0) > CARD_LIMITS.hands;
}

/**
 * The card without what cannot be played yet: patterns with problems, and sections left without a pattern. Null where
 * nothing is left, or too much. `reports` has one for each pattern, in their order.
 */
export function playablePart(card: CardFile, reports: readonly PatternReport[]): CardFile | null {
  if (areTooMany(reports)) return null;
  const patterns = card.patterns.filter((_, index) => reports[index]!.problems.length === 0);
  const used = new Set(patterns.map(({ section }) => section));
  const sections = card.sections.filter(({ id }) => used.has(id));
  return patterns.length === 0 ? null : { ...card, sections, patterns };
}
