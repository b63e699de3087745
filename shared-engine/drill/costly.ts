// Whether a choice cost enough to speak of: by the deeper judgement once it is there, until then by the quick loss.
import type { Basis, ChoiceReview } from '../analysis/review/review.ts';

export function isCostly({ judgement, loss }: ChoiceReview, { smallLoss }: Basis): boolean {
  return judgement.depth === 'deep' ? judgement.verdict === 'better-exists' : loss >= smallLoss;
}
