// What the playouts say of a choice, before the picture that shows it.
import type { DeepAnalysis } from '../../shared-engine/index.ts';

export function DeepSentences({ judgement }: { readonly judgement: DeepAnalysis }) {
  return (
    <>
      {judgement.sentences.map((sentence) => (
        <p key={sentence} class="verdict">
          {sentence}
        </p>
      ))}
    </>
  );
}
