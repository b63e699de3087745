// The fold of a review that checks the deal; the code that deals again is fetched when it is opened.
import { useState } from 'preact/hooks';
import type { Seated } from '../room/room.ts';
import { DEAL_CHECK } from './deal-check-strings.ts';
import { REVIEW } from './strings.ts';

type ResultPart = typeof import('./deal-check-result.tsx');

export function DealCheckPanel({ seated }: { readonly seated: Seated }) {
  const [part, setPart] = useState<ResultPart | 'failed' | null>(null);
  const { view, table } = seated;
  if (view.stage.phase !== 'closed') return null;
  const { seed } = view.stage;
  if (seed === null || view.commitment === null) {
    return <p class="panel aside">{DEAL_CHECK.prepared}</p>;
  }
  const opened = (open: boolean) => {
    if (!open || (part !== null && part !== 'failed')) return;
    import('./deal-check-result.tsx').then(setPart, () => setPart('failed'));
  };
  return (
    <details class="panel deal-check" onToggle={(event) => opened(event.currentTarget.open)}>
      <summary>{REVIEW.check}</summary>
      {part === 'failed' && <p role="alert">{DEAL_CHECK.failed}</p>}
      {part !== null && part !== 'failed' && (
        <part.DealCheckResult
          seed={seed}
          commitment={view.commitment}
          dealer={view.dealer}
          record={view.record}
          name={`quadrille-deal-${table.code}-${table.round}.json`}
        />
      )}
    </details>
  );
}
