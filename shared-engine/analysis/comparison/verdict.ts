// What intervals allow to be said of a choice.
import type { Estimate } from './estimate.ts';

export const COMPARED_VERDICTS = ['better-exists', 'as-good', 'undecided'] as const;
export type ComparedVerdict = (typeof COMPARED_VERDICTS)[number];

/**
 * The smallest loss worth telling, in wins in 100 games. Set before any result was seen. Six passes of this loss add
 * up to six, about a quarter of the 25 in 100 that an even table gives a seat.
 */
export const SMALL_LOSS = 1;

/** `differences` holds, for every alternative compared, by how much it is better than the choice; intervals hold at once. */
export function verdictOf(differences: readonly Estimate[], smallLoss: number = SMALL_LOSS): ComparedVerdict {
  if (differences.some(({ value, halfWidth }) => value - halfWidth > smallLoss)) return 'better-exists';
  return differences.every(({ value, halfWidth }) => value + halfWidth <= smallLoss)
    ? 'as-good'
    : 'undecided';
}
