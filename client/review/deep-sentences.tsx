// What the deep analysis says of a choice, above the chart that shows it.
import type { DeepAnalysis } from '../../shared-engine/index.ts';

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
