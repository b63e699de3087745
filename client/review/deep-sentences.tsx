// What the playouts say of a choice, before the picture that shows it.
import type { DeepJudgement } from '../../shared-engine/index.ts';

export function DeepWords({ judgement }: { readonly judgement: DeepJudgement }) {
  return (
    <>
      {judgement.words.map((sentence) => (
        <p key={sentence} class="verdict">
          {sentence}
        </p>
      ))}
    </>
  );
}
