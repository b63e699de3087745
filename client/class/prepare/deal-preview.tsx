// What one deal of a drill is like: the rack of a description and how rare it is, what the judge says, a search for a lesson.
import { useEffect, useState } from 'preact/hooks';
import type { BetterPass } from '../../../shared-engine/index.ts';
import { randomHex } from '../../connection/random.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { twoPlaces } from '../../ui/numbers.ts';
import { DealSearch } from './deal-search.tsx';
import type { DealSetup, DealTaskUpdate } from './deal-tasks.ts';
import { RackJudgement } from './rack-judgement.tsx';
import { DEAL_PREVIEW } from './strings.ts';
import { runDealTask } from './worker-client.ts';

interface DealPreviewProps extends DealSetup {
  /** Takes another seed for whatever the deal leaves to chance. */
  readonly onSeed: (seed: string) => void;
}

/** Pause after the last change before the preview is made, in milliseconds. */
const PAUSE_MS = 400;

export function DealPreview({ deal, bots, card, onSeed }: DealPreviewProps) {
  const [lesson, setLesson] = useState<Lesson | null>(null);
  const { seat, dealer, tiles } = deal;
  const key = JSON.stringify({ seat, dealer, tiles, bots, card });
  const isDrawn = tiles.kind === 'sampled';
  const update = usePreview({ deal, bots, card }, key, isDrawn);

  return (
    <div class="deal-preview">
      <div role="status" class="deal-preview-result">
        {isDrawn && update === null && <p>{DEAL_PREVIEW.working}</p>}
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
      <div class="row">
        <button type="button" onClick={() => onSeed(randomHex(32))}>
          {DEAL_PREVIEW.another}
        </button>
        <RackJudgement setup={{ deal, bots, card }} setupKey={key} />
        <DealSearch
          setup={{ deal, bots, card }}
          setupKey={key}
          onFound={(seed, better) => {
            onSeed(seed);
            const found = JSON.stringify({ seat, dealer, tiles: { ...tiles, seed }, bots, card });
            setLesson({ key: found, better });
          }}
        />
      </div>
    </div>
  );
}

/**
 * The latest preview of this deal, made anew when `key` changes; null while it is on its way, and where the rack stands
 * in the head of the deal already.
 */
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
