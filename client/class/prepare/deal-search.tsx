// The search for a deal with a lesson in it: one in which a first pass is clearly better than the typical one.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BetterPass } from '../../../shared-engine/index.ts';
import { randomHex } from '../../connection/random.ts';
import type { DealSetup } from './deal-tasks.ts';
import { DEAL_PREVIEW } from './strings.ts';
import { runDealTask } from './worker-client.ts';

interface DealSearchProps {
  readonly setup: DealSetup;
  /** Changes with the deal; a running search then ends. */
  readonly setupKey: string;
  readonly onFound: (seed: string, better: BetterPass) => void;
}

/** Deals that one search checks; of random deals about one in ten has a clearly better first pass. */
const MAX_DEALS = 60;

export function DealSearch({ setup, setupKey, onFound }: DealSearchProps) {
  const [tried, setTried] = useState<number | null>(null);
  const [ended, setEnded] = useState<string | null>(null);
  const cancel = useRef(() => {});
  useEffect(() => {
    setEnded(null);
    return () => {
      cancel.current();
      setTried(null);
    };
  }, [setupKey]);

  function start() {
    const seeds = Array.from({ length: MAX_DEALS }, () => randomHex(32));
    setEnded(null);
    setTried(0);
    cancel.current = runDealTask({ kind: 'search', seeds, ...setup }, (update) => {
      if (update.kind === 'searched') return setTried(update.tried);
      setTried(null);
      if (update.kind === 'found') return onFound(update.seed, update.better);
      if (update.kind === 'none') setEnded(DEAL_PREVIEW.none(update.tried));
      if (update.kind === 'rejected') setEnded(update.message);
    });
  }

  if (tried !== null) {
    return (
      <>
        <button
          type="button"
          onClick={() => {
            cancel.current();
            setTried(null);
          }}
        >
          {DEAL_PREVIEW.cancel}
        </button>
        <label class="search-progress">
          {DEAL_PREVIEW.searched(tried, MAX_DEALS)}
          <progress max={MAX_DEALS} value={tried} />
        </label>
      </>
    );
  }
  return (
    <>
      <button type="button" onClick={start}>
        {DEAL_PREVIEW.search}
      </button>
      {ended && <p role="status">{ended}</p>}
    </>
  );
}
