// What appears in a review once choices have been played on: sentences, the folded first answer, and the progress.
import type { ComponentChildren } from 'preact';
import type { DeepAnalysis, Review } from '../../shared-engine/index.ts';
import { analysisProgress, DEEP, progressSentence } from './deep-strings.ts';

export function DeepSentences({ analysis }: { readonly analysis: DeepAnalysis }) {
  return (
    <>
      {analysis.sentences.map((sentence) => (
        <p key={sentence} class="verdict">
          {sentence}
        </p>
      ))}
    </>
  );
}

export function FirstAnswer({ children }: { readonly children: ComponentChildren }) {
  return (
    <details class="panel first-answer">
      <summary>{DEEP.firstAnswer}</summary>
      <p class="aside">{DEEP.firstAnswerAbout}</p>
      {children}
    </details>
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
