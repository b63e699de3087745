// The five verdicts, and what estimates from a fresh sample allow to be said of a choice.
import type { Estimate } from './estimate.ts';

export const VERDICTS = ['best', 'just-as-good', 'a-little-worse', 'costly', 'cant-say'] as const;
export type Verdict = (typeof VERDICTS)[number];

/**
 * δ, the smallest loss worth telling, in wins in 100 games. Set before any result was seen. Six passes of this loss add
 * up to six, about a quarter of the 25 in 100 that an even table gives a seat.
 */
export const SMALL_LOSS = 1;

/** What a fresh sample says of the alternatives to a choice: by how much each is better than it. */
export interface Ahead {
  /** The alternative that is spoken of; null where there is none. */
  readonly named: Estimate | null;
  /** The largest value among all, and the largest upper bound. */
  readonly most: number;
  readonly atMost: number;
}

/**
 * "Best" and "just as good" say that every alternative is at most δ better: each has its own bound, and the claim
 * errs only where all of them do, so that nothing is corrected for their number (intersection–union). "Costly" and "a
 * little worse" rest on the alternative spoken of, which other deals have picked.
 */
export function verdictOf({ named, most, atMost }: Ahead, smallLoss: number = SMALL_LOSS): Verdict {
  if (named === null) return 'best';
  if (atMost <= smallLoss) return most <= 0 ? 'best' : 'just-as-good';
  const least = named.value - named.halfWidth;
  if (least > smallLoss) return 'costly';
  return least > 0 ? 'a-little-worse' : 'cant-say';
}
