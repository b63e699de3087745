// Parses unknown JSON into a card file that compiles, or into the list of all problems found in it.
import { z } from 'zod';
import { countOfAssignments, valuesOf } from './assignment.ts';
import { boundsProblem } from './bounds.ts';
import { CARD_LIMITS, type CardFile, type CardPattern, cardFileSchema, patternSchema } from './format.ts';
import { handsOf } from './hands.ts';
import { type CardProblem, cardProblem } from './problem.ts';
import { countsHands, handProblems, patternProblems, tooManyHandsProblem } from './semantics.ts';
import { cardStructureProblems, patternStructureProblems } from './structure.ts';

export type ParsedCard =
  | { readonly ok: true; readonly card: CardFile }
  | { readonly ok: false; readonly problems: readonly CardProblem[] };

/** The search ends here: a longer list helps nobody and would keep the server busy. */
const MAX_PROBLEMS = 60;

/** The card with its patterns not parsed yet, so that a fault in one pattern hides none in another. */
const frameSchema = cardFileSchema.extend({
  patterns: z.array(z.unknown()).min(1).max(CARD_LIMITS.patterns).readonly(),
});

/** Takes what JSON.parse returned; never throws. Every pattern of an accepted card has at least one possible hand. */
export function parseCard(json: unknown): ParsedCard {
  const unreadable = boundsProblem(json);
  if (unreadable !== null) return { ok: false, problems: [unreadable] };
  const frame = frameSchema.safeParse(json);
  if (!frame.success)
    return { ok: false, problems: cardStructureProblems(frame.error.issues).slice(0, MAX_PROBLEMS) };

  const { sections, parameters } = frame.data;
  const problems = duplicates(sections.map(({ id }) => id)).map((id) =>
    cardProblem('duplicate-id', null, null, `two sections are called "${id}"; rename one.`),
  );
  const patterns: CardPattern[] = [];
  frame.data.patterns.forEach((unread, index) => {
    const read = patternSchema.safeParse(unread);
    if (read.success) patterns.push(read.data);
    else problems.push(...patternStructureProblems(read.error.issues, nameOf(unread, index)));
  });
  for (const id of duplicates(patterns.map((pattern) => pattern.id))) {
    problems.push(cardProblem('duplicate-id', id, null, 'two patterns have this id; rename one.'));
  }
  const sectionIds = new Set(sections.map(({ id }) => id));
  const countable: CardPattern[] = [];
  for (const pattern of patterns) {
    if (problems.length >= MAX_PROBLEMS) break;
    const found = patternProblems(pattern, sectionIds, parameters);
    problems.push(...found);
    if (found.every(({ code }) => countsHands(code))) countable.push(pattern);
  }
  const tooMany = tooManyHands(countable);
  if (tooMany) problems.push(tooMany);
  else {
    for (const pattern of countable) {
      problems.push(...handProblems(pattern, handsOf(pattern, parameters), parameters));
    }
  }
  return problems.length > 0
    ? { ok: false, problems: problems.slice(0, MAX_PROBLEMS) }
    : { ok: true, card: { ...frame.data, patterns } };
}

/** Counted over the whole card before any hand is built: no file makes the program build more than the bound. */
function tooManyHands(patterns: readonly CardPattern[]): CardProblem | null {
  let hands = 0;
  for (const pattern of patterns) {
    hands += countOfAssignments(valuesOf(pattern));
    if (hands > CARD_LIMITS.hands) return tooManyHandsProblem(pattern.id);
  }
  return null;
}

function nameOf(unread: unknown, index: number): string {
  const named = z.object({ id: patternSchema.shape.id }).safeParse(unread);
  return named.success ? named.data.id : String(index + 1);
}

function duplicates(ids: readonly string[]): string[] {
  return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))];
}
