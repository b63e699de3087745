// A look ahead at one deal of a drill: what it deals, how rare that is, and a search for one with a lesson in it.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BetterPass } from '../../shared-engine/index.ts';
import { randomHex } from '../connection/random.ts';
import { figure } from '../review/strings.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { LOOK } from './deal-preview-strings.ts';
import type { AboutDeal, DealNews } from './tasks.ts';
import { askAboutDeal } from './worker-client.ts';

interface DealLookProps extends AboutDeal {
  /** Takes another seed for what the deal leaves to chance. */
  readonly onSeed: (seed: string) => void;
}

/** Pause after the last change before anything is worked out, in milliseconds. */
const PAUSE_MS = 400;
/** Deals that one search looks at; of deals by chance every tenth has a clearly better first pass. */
const DEALS = 60;

export function DealLook({ deal, bots, card, onSeed }: DealLookProps) {
  const wished = deal.tiles.kind === 'described' && Object.keys(deal.tiles.wish).length > 0;
  const [opened, setOpened] = useState(false);
  const [news, setNews] = useState<DealNews | null>(null);
  const [lesson, setLesson] = useState<Lesson | null>(null);
  const { seat, dealer, tiles } = deal;
  const asked = JSON.stringify({ seat, dealer, tiles, bots, card });
  const open = opened || wished;
  useEffect(() => {
    setNews(null);
    if (!open) return;
    let callOff = () => {};
    const timer = setTimeout(() => {
      callOff = askAboutDeal({ kind: 'preview', deal, bots, card }, setNews);
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      callOff();
    };
  }, [asked, open]);

  return (
    <div class="deal-look">
      {open && (
        <div role="status" class="deal-preview">
          {news === null && <p>{LOOK.working}</p>}
          {news?.kind === 'refused' && <p class="notice">{news.sentence}</p>}
          {news?.kind === 'dealt' && (
            <>
              {news.rarity && <p>{news.rarity}</p>}
              <p>
                {LOOK.dealt} <TileRow tiles={news.rack} />
              </p>
            </>
          )}
          {lesson?.asked === asked && <Found better={lesson.better} />}
        </div>
      )}
      <div class="row">
        {open ? (
          <button type="button" onClick={() => onSeed(randomHex(32))}>
            {LOOK.another}
          </button>
        ) : (
          <button type="button" onClick={() => setOpened(true)}>
            {LOOK.show}
          </button>
        )}
        <Search
          about={{ deal, bots, card }}
          asked={asked}
          onFound={(seed, better) => {
            onSeed(seed);
            setOpened(true);
            const found = JSON.stringify({ seat, dealer, tiles: { ...tiles, seed }, bots, card });
            setLesson({ asked: found, better });
          }}
        />
      </div>
    </div>
  );
}

interface Lesson {
  /** The deal that it is about. */
  readonly asked: string;
  readonly better: BetterPass;
}

function Found({ better: { played, better, loss, within } }: { readonly better: BetterPass }) {
  return (
    <>
      <p>
        {LOOK.usual} <TileRow tiles={played} />
      </p>
      <p>
        {LOOK.better} <TileRow tiles={better} />{' '}
        {LOOK.ahead(figure(loss), figure(loss - within), figure(loss + within))}
      </p>
    </>
  );
}

interface SearchProps {
  readonly about: AboutDeal;
  readonly asked: string;
  readonly onFound: (seed: string, better: BetterPass) => void;
}

function Search({ about, asked, onFound }: SearchProps) {
  const [tried, setTried] = useState<number | null>(null);
  const [ended, setEnded] = useState<string | null>(null);
  const callOff = useRef(() => {});
  // What is looked for has changed, or the deal is gone.
  useEffect(() => {
    setEnded(null);
    return () => {
      callOff.current();
      setTried(null);
    };
  }, [asked]);

  function start() {
    const seeds = Array.from({ length: DEALS }, () => randomHex(32));
    setEnded(null);
    setTried(0);
    callOff.current = askAboutDeal({ kind: 'search', seeds, ...about }, (news) => {
      if (news.kind === 'looked') return setTried(news.tried);
      setTried(null);
      if (news.kind === 'found') return onFound(news.seed, news.better);
      setEnded(news.kind === 'refused' ? news.sentence : LOOK.none(DEALS));
    });
  }

  if (tried !== null) {
    return (
      <>
        <button
          type="button"
          onClick={() => {
            callOff.current();
            setTried(null);
          }}
        >
          {LOOK.cancel}
        </button>
        <label class="search-progress">
          {LOOK.looked(tried, DEALS)}
          <progress max={DEALS} value={tried} />
        </label>
      </>
    );
  }
  return (
    <>
      <button type="button" onClick={start}>
        {LOOK.search}
      </button>
      {ended && <p role="status">{ended}</p>}
    </>
  );
}
