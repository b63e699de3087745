// What the judge says of a rack before anybody is dealt it: what most would pass, and whether something better is known.
import { useEffect, useRef, useState } from 'preact/hooks';
import { VERDICTS } from '../../room/verdicts.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import type { DealSetup, DealTaskUpdate } from './deal-tasks.ts';
import { DEAL_PREVIEW } from './strings.ts';
import { runDealTask } from './worker-client.ts';

interface RackJudgementProps {
  readonly setup: DealSetup;
  /** Changes with the deal, about which nothing is said any more then. */
  readonly setupKey: string;
}

export function RackJudgement({ setup, setupKey }: RackJudgementProps) {
  const [answer, setAnswer] = useState<DealTaskUpdate | 'working' | null>(null);
  const cancel = useRef(() => {});
  useEffect(
    () => () => {
      cancel.current();
      setAnswer(null);
    },
    [setupKey],
  );
  return (
    <>
      <button
        type="button"
        aria-disabled={answer === 'working'}
        onClick={() => {
          if (answer === 'working') return;
          setAnswer('working');
          cancel.current = runDealTask({ kind: 'judge', ...setup }, setAnswer);
        }}
      >
        {DEAL_PREVIEW.judge}
      </button>
      <div class="rack-judgement" role="status">
        {answer === 'working' && <p>{DEAL_PREVIEW.judging}</p>}
        {answer !== null && answer !== 'working' && <Judged update={answer} />}
      </div>
    </>
  );
}

function Judged({ update }: { readonly update: DealTaskUpdate }) {
  if (update.kind === 'rejected') return <p class="notice">{update.message}</p>;
  if (update.kind !== 'judged') return null;
  const { played, better, verdict, sentences } = update.pass;
  return (
    <>
      <p>
        {DEAL_PREVIEW.typical} <TileRow tiles={played} /> <b>{VERDICTS[verdict].name}</b>
      </p>
      {better && (
        <p>
          {DEAL_PREVIEW.betterPass} <TileRow tiles={better} />
        </p>
      )}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </>
  );
}
