// What is said of a choice, and how far the analysis of the round has come.
import type { ChoiceStory, Review } from '../../shared-engine/index.ts';
import { analysisProgress, progressSentence } from './deep-strings.ts';

export function Sentences({ story }: { readonly story: ChoiceStory }) {
  return (
    <>
      {story.sentences.map((sentence) => (
        <p key={sentence} class="verdict">
          {sentence}
        </p>
      ))}
    </>
  );
}

/** Gone once all choices have been played on. */
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
