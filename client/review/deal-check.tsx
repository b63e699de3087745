// The fold of a review that checks the deal; the code that deals again is fetched when it is opened.
import { useState } from 'preact/hooks';
import type { KeptCommitment } from '../room/kept-commitment.ts';
import type { Seated } from '../room/room.ts';
import { DEAL_CHECK } from './deal-check-strings.ts';
import { REVIEW } from './strings.ts';

/** Fetched together; the words are also fetched without the rest. */
const fetchParts = async () => ({
  ...(await import('./deal-check-result.tsx')),
  words: await import('../room/commitment-words.tsx'),
});
type Parts = Awaited<ReturnType<typeof fetchParts>>;

interface DealCheckPanelProps {
  readonly seated: Seated;
  readonly kept: KeptCommitment | null;
}

export function DealCheckPanel({ seated, kept }: DealCheckPanelProps) {
  const [part, setPart] = useState<Parts | 'failed' | null>(null);
  const commitment = kept?.round === seated.table.round ? kept.commitment : seated.view.commitment;
  if (commitment === null) {
    const { controls, mode, seats } = seated.table;
    const withBots = seats.some(({ kind }) => kind === 'bot');
    const alone = withBots ? DEAL_CHECK.wentOn : DEAL_CHECK.ownTiles;
    const prepared = mode === 'class' ? DEAL_CHECK.prepared : alone;
    return <p class="panel aside">{controls?.amongFriends ? DEAL_CHECK.same : prepared}</p>;
  }
  const opened = (open: boolean) => {
    if (!open || (part !== null && part !== 'failed')) return;
    fetchParts().then(setPart, () => setPart('failed'));
  };
  return (
    <details class="panel deal-check" onToggle={(event) => opened(event.currentTarget.open)}>
      <summary>{REVIEW.check}</summary>
      {part === 'failed' && <p role="alert">{DEAL_CHECK.failed}</p>}
      {part !== null && part !== 'failed' && (
        <part.DealCheckResult seated={seated} commitment={commitment} words={part.words} />
      )}
    </details>
  );
}
