// Everything that can be wrong with a drill, each a value with a message that names the deal and says what to do.

export const DRILL_PROBLEM_CODES = [
  'not-json',
  'too-large',
  'unsafe-name',
  'unknown-version',
  'not-in-format',
  'bad-card',
  'cannot-play',
  'duplicate-id',
  'more-than-the-set',
  'too-many-copies',
  'too-many-jokers',
  'rack-too-large',
  'cannot-be-scripted',
  'unknown-section',
  'impossible-constraint',
  'too-rare',
  'used-up',
] as const;
export type DrillProblemCode = (typeof DRILL_PROBLEM_CODES)[number];

export interface DrillProblem {
  readonly code: DrillProblemCode;
  /** Id of the deal, its number ("5" for the fifth) where it has no usable id, or null for the drill as a whole. */
  readonly deal: string | null;
  /** Place, fault and what to do. */
  readonly message: string;
}

export function drillProblem(code: DrillProblemCode, deal: string | null, text: string): DrillProblem {
  const place = deal === null ? 'Drill' : /^\d+$/.test(deal) ? `Deal ${deal}` : `Deal "${deal}"`;
  return { code, deal, message: `${place}: ${text}` };
}
