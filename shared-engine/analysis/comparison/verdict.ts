// One function from intervals to what the review may say of a choice.
import type { Estimate } from './estimate.ts';

export const VERDICTS = ['better-exists', 'as-good', 'too-close', 'not-looked-at'] as const;
export type Verdict = (typeof VERDICTS)[number];
/** What can be said of a choice that was looked at. */
export type LookedAt = Exclude<Verdict, 'not-looked-at'>;

/**
 * The smallest loss worth telling, in points of outlook. Set before any result was seen: one round in a hundred.
 * Six passes of this loss add up to six points, about a quarter of the 25 in 100 that an even table gives a seat.
 */
export const SMALL_LOSS = 1;

/**
 * `ahead` holds, for every rival that was looked at closely, how far it is ahead of the choice made, with
 * intervals that hold all at once.
 */
export function verdictOf(ahead: readonly Estimate[], smallLoss: number = SMALL_LOSS): LookedAt {
  if (ahead.some(({ value, within }) => value - within > smallLoss)) return 'better-exists';
  return ahead.every(({ value, within }) => value + within <= smallLoss) ? 'as-good' : 'too-close';
}
