// What can be wrong with a card file, as a value that names the place and says what to do.

export const CARD_PROBLEM_CODES = [
  'too-large',
  'unsafe-name',
  'not-in-format',
  'duplicate-id',
  'unknown-family',
  'not-14-tiles',
  'variable-mixed',
  'variable-unused',
  'too-many-variables',
  'wrong-where',
  'number-out-of-range',
  'no-year',
  'no-choice',
  'too-few-copies',
  'too-many-jokers',
  'too-many-hands',
] as const;
export type CardProblemCode = (typeof CARD_PROBLEM_CODES)[number];

export interface CardProblem {
  readonly code: CardProblemCode;
  /** Id of the line, its place ("5" for the fifth) when it has no usable id, or null for the card as a whole. */
  readonly line: string | null;
  /** Place of the group in its line, the first being 1, or null for the whole line. */
  readonly group: number | null;
  /** Place, fault and what to do. */
  readonly sentence: string;
}

export function cardProblem(
  code: CardProblemCode,
  line: string | null,
  group: number | null,
  words: string,
): CardProblem {
  const place = line === null ? 'Card' : /^\d+$/.test(line) ? `Line ${line}` : `Line "${line}"`;
  return {
    code,
    line,
    group,
    sentence: group === null ? `${place}: ${words}` : `${place}, group ${group}: ${words}`,
  };
}
