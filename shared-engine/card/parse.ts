// The border of the card room: from unknown JSON to a card file that compiles, or every problem found in it.
import { z } from 'zod';
import { alternativesOf, countOfAssignments } from './assignment.ts';
import { boundsProblem } from './bounds.ts';
import { CARD_LIMITS, type CardFile, type CardLine, cardFileSchema, lineSchema } from './format.ts';
import { handProblems, plainProblems } from './meaning.ts';
import { type CardProblem, cardProblem } from './problem.ts';
import { cardStructure, lineStructure } from './structure.ts';

export type ParsedCard =
  | { readonly ok: true; readonly card: CardFile }
  | { readonly ok: false; readonly problems: readonly CardProblem[] };

/** More than this help nobody, and looking for them would keep the server busy. */
const MAX_PROBLEMS = 60;

/** The card with its lines still unread, so that a fault in one line hides none in another. */
const frameSchema = cardFileSchema.extend({
  lines: z.array(z.unknown()).min(1).max(CARD_LIMITS.lines).readonly(),
});

/** Reads what JSON.parse gave; never throws. Every line of an accepted card has at least one possible hand. */
export function parseCard(json: unknown): ParsedCard {
  const unreadable = boundsProblem(json);
  if (unreadable !== null) return { ok: false, problems: [unreadable] };
  const frame = frameSchema.safeParse(json);
  if (!frame.success)
    return { ok: false, problems: cardStructure(frame.error.issues).slice(0, MAX_PROBLEMS) };

  const { families, parameters } = frame.data;
  const problems = duplicates(families.map(({ id }) => id)).map((id) =>
    cardProblem('duplicate-id', null, null, `two families are called "${id}"; rename one.`),
  );
  const lines: CardLine[] = [];
  frame.data.lines.forEach((unread, index) => {
    const read = lineSchema.safeParse(unread);
    if (read.success) lines.push(read.data);
    else problems.push(...lineStructure(read.error.issues, nameOf(unread, index)));
  });
  for (const id of duplicates(lines.map((line) => line.id))) {
    problems.push(cardProblem('duplicate-id', id, null, 'two lines have this id; rename one.'));
  }
  const familyIds = new Set(families.map(({ id }) => id));
  let hands = 0;
  for (const line of lines) {
    if (problems.length >= MAX_PROBLEMS) break;
    const plain = plainProblems(line, familyIds, parameters);
    problems.push(...plain);
    if (plain.some(({ code }) => CHOICE_BREAKERS.has(code))) continue;
    hands += countOfAssignments(alternativesOf(line));
    if (hands > CARD_LIMITS.hands) {
      const words = `with it the card comes to more than ${CARD_LIMITS.hands} hands; fix some of its variables with "where".`;
      problems.push(cardProblem('too-many-hands', line.id, null, words));
      break;
    }
    problems.push(...handProblems(line, parameters));
  }
  return problems.length > 0
    ? { ok: false, problems: problems.slice(0, MAX_PROBLEMS) }
    : { ok: true, card: { ...frame.data, lines } };
}

/** After these the choices of a line mean nothing and would only repeat the fault. */
const CHOICE_BREAKERS: ReadonlySet<string> = new Set([
  'variable-mixed',
  'too-many-variables',
  'wrong-where',
  'number-out-of-range',
  'no-year',
]);

function nameOf(unread: unknown, index: number): string {
  const named = z.object({ id: lineSchema.shape.id }).safeParse(unread);
  return named.success ? named.data.id : String(index + 1);
}

function duplicates(ids: readonly string[]): string[] {
  return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))];
}
