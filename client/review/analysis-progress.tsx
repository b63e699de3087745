// How many choices have been played on already; gone once all have.
import type { Review } from '../../shared-engine/index.ts';
import { analysisProgress, progressSentence } from './deep-strings.ts';

export function AnalysisProgressBar({ review }: { readonly review: Review }) {
  const progress = analysisProgress(review);
  if (progress === null) return null;
  return (
    <div class="analysis-progress">
      <progress id="analysis-progress" value={progress.done} max={progress.all} />
      <label for="analysis-progress">{progressSentence(progress)}</label>
    </div>
  );
}
