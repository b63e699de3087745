// Whether what another player chose made a choice void: a vote to stop (rule O1), the smaller number asked for (rule Y1).
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import type { ChoiceReview } from '../../shared-engine/analysis/review/review.ts';

/** A number asked for is told to be void where a better one would have been agreed down, or up, to the same. */
export function isOverruled(choice: ChoiceReview, analysis: DeepAnalysis | null): boolean {
  if (choice.kind !== 'ask') return choice.kind === 'vote' && choice.anotherStopped;
  if (analysis === null || choice.askedAcross === null) return false;
  const better = analysis.finalists[analysis.bestAlternative ?? -1]?.number ?? choice.played;
  const held = (number: number): number => Math.min(number, choice.askedAcross!);
  return better !== choice.played && held(better) === held(choice.played);
}
