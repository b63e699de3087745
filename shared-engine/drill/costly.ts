// Whether a choice cost enough to mention: by its deep analysis, or by the quick loss as long as there is none.
import type { Basis, ChoiceReview } from '../analysis/review/review.ts';

export function isCostly({ analysis, loss }: ChoiceReview, { smallLoss }: Basis): boolean {
  return analysis.depth === 'deep' ? analysis.verdict === 'better-exists' : loss >= smallLoss;
}
