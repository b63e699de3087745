// The fold beside the rack with the commitment of the deal as six words, for friends to compare.
import { useState } from 'preact/hooks';
import { SIX_WORDS } from './strings.ts';

type WordsPart = typeof import('./commitment-words.tsx');

export function SixWords({ commitment }: { readonly commitment: string }) {
  const [part, setPart] = useState<WordsPart | 'failed' | null>(null);
  const opened = (open: boolean) => {
    if (!open || (part !== null && part !== 'failed')) return;
    import('./commitment-words.tsx').then(setPart, () => setPart('failed'));
  };
  return (
    <details class="history" onToggle={(event) => opened(event.currentTarget.open)}>
      <summary>{SIX_WORDS.title}</summary>
      {part === 'failed' && <p role="alert">{SIX_WORDS.failed}</p>}
      {part !== null && part !== 'failed' && (
        <>
          <part.CommitmentWords commitment={commitment} />
          <p>{SIX_WORDS.about}</p>
          <part.WordsAbout />
        </>
      )}
    </details>
  );
}
