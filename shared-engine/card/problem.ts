// A problem in a card file: a code, its place, and a message that says what to do.

export const CARD_PROBLEM_CODES = [
  'too-large',
  'unsafe-name',
  'not-in-format',
  'duplicate-id',
  'unknown-section',
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
  /** Id of the pattern, its number ("5" for the fifth) where it has no usable id, or null for the card as a whole. */
  readonly pattern: string | null;
  /** Number of the group in its pattern, from 1; null for the whole pattern. */
  readonly group: number | null;
  /** The place, the fault and what to do. */
  readonly message: string;
}

export function cardProblem(
  code: CardProblemCode,
  pattern: string | null,
  group: number | null,
  text: string,
): CardProblem {
  const place =
    pattern === null ? 'Card' : /^\d+$/.test(pattern) ? `Pattern ${pattern}` : `Pattern "${pattern}"`;
  return {
    code,
    pattern,
    group,
    message: group === null ? `${place}: ${text}` : `${place}, group ${group}: ${text}`,
  };
}
