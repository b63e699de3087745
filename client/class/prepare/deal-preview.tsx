// A preview of one deal of a drill: its tiles, how rare they are, and a search for a deal with a lesson in it.
import { useEffect, useState } from 'preact/hooks';
import type { BetterPass } from '../../../shared-engine/index.ts';
import { randomHex } from '../../connection/random.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { twoPlaces } from '../../ui/numbers.ts';
import { DealSearch } from './deal-search.tsx';
import type { DealSetup, DealTaskUpdate } from './deal-tasks.ts';
import { DEAL_PREVIEW } from './strings.ts';
import { runDealTask } from './worker-client.ts';

interface DealPreviewProps extends DealSetup {
  /** Takes another seed for whatever the deal leaves to chance. */
  readonly onSeed: (seed: string) => void;
}

/** Pause after the last change before the preview is made, in milliseconds. */
const PAUSE_MS = 400;

export function DealPreview({ deal, bots, card, onSeed }: DealPreviewProps) {
  const constrained = deal.tiles.kind === 'sampled' && Object.keys(deal.tiles.constraint).length > 0;
  const [opened, setOpened] = useState(false);
  const [lesson, setLesson] = useState<Lesson | null>(null);
  const { seat, dealer, tiles } = deal;
  const key = JSON.stringify({ seat, dealer, tiles, bots, card });
  const open = opened || constrained;
  const update = usePreview({ deal, bots, card }, key, open);

  return (
    <div class="deal-preview">
      {open && (
        <div role="status" class="deal-preview-result">
          {update === null && <p>{DEAL_PREVIEW.working}</p>}
          {update?.kind === 'rejected' && <p class="notice">{update.message}</p>}
          {update?.kind === 'dealt' && (
            <>
              {update.rarity && <p>{update.rarity}</p>}
              <p>
                {DEAL_PREVIEW.dealt} <TileRow tiles={update.rack} />
              </p>
            </>
          )}
          {lesson?.key === key && <LessonFound better={lesson.better} />}
        </div>
      )}
      <div class="row">
        {open ? (
          <button type="button" onClick={() => onSeed(randomHex(32))}>
            {DEAL_PREVIEW.another}
          </button>
        ) : (
          <button type="button" onClick={() => setOpened(true)}>
            {DEAL_PREVIEW.show}
          </button>
        )}
        <DealSearch
          setup={{ deal, bots, card }}
          setupKey={key}
          onFound={(seed, better) => {
            onSeed(seed);
            setOpened(true);
            const found = JSON.stringify({ seat, dealer, tiles: { ...tiles, seed }, bots, card });
            setLesson({ key: found, better });
          }}
        />
      </div>
    </div>
  );
}

/** The latest preview of this deal, made anew when `key` changes; null while it is on its way or not wanted. */
function usePreview(setup: DealSetup, key: string, wanted: boolean): DealTaskUpdate | null {
  const [update, setUpdate] = useState<DealTaskUpdate | null>(null);
  useEffect(() => {
    setUpdate(null);
    if (!wanted) return;
    let cancel = () => {};
    const timer = setTimeout(() => {
      cancel = runDealTask({ kind: 'preview', ...setup }, setUpdate);
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      cancel();
    };
  }, [key, wanted]);
  return update;
}

interface Lesson {
  /** The deal that it is about. */
  readonly key: string;
  readonly better: BetterPass;
}

function LessonFound({ better: { played, better, loss, halfWidth } }: { readonly better: BetterPass }) {
  return (
    <>
      <p>
        {DEAL_PREVIEW.typical} <TileRow tiles={played} />
      </p>
      <p>
        {DEAL_PREVIEW.better} <TileRow tiles={better} />{' '}
        {DEAL_PREVIEW.difference(twoPlaces(loss), twoPlaces(loss - halfWidth), twoPlaces(loss + halfWidth))}
      </p>
    </>
  );
}
