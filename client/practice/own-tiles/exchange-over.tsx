// The end of an exchange with real tiles: the rack it led to, and the round it has become in this browser.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type CardFile, facesOf, type LaidExchange } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { TextStorage } from '../../storage/browser-storage.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { keepRound } from '../history/keep-rounds.ts';
import { storedCard } from '../history/round-of.ts';
import { STORAGE_PROBLEMS } from '../history/strings.ts';
import type { Judge } from '../question/judged.ts';
import { choicesJudged, laidRound } from './laid-round.ts';
import type { OwnTable } from './own-table.ts';
import { OWN_TILES } from './strings.ts';

interface ExchangeOverProps {
  readonly app: App;
  readonly storage: TextStorage;
  readonly now: () => number;
  readonly file: CardFile;
  readonly own: OwnTable;
  readonly judge: Judge;
  /** As the exchange stood before each entry, and last as it stands. */
  readonly exchanges: readonly LaidExchange[];
}

export function ExchangeOver({ app, storage, now, file, own, judge, exchanges }: ExchangeOverProps) {
  const problem = useSignal<StorageProblem | null>(null);
  const isKept = useSignal(false);
  const exchange = exchanges.at(-1)!;
  const choices = choicesJudged(judge, own, exchanges);
  const round = laidRound({ own, exchange, choices, card: file, playedAt: now() });
  const judged = choices.filter(({ verdict }) => verdict !== null).length;
  // Stored as it ends, and again with each verdict that comes after it.
  useEffect(() => {
    void keepRound(round, storedCard(file), storage).then((refused) => {
      problem.value = refused;
      isKept.value = refused === null;
    });
  }, [round.summary.id, judged]);
  return (
    <section class="own-step">
      <h2>{OWN_TILES.over}</h2>
      <p>{OWN_TILES.final}</p>
      <TileRow tiles={facesOf(exchange.rack)} />
      <div role="status">
        {problem.value && <p class="notice">{STORAGE_PROBLEMS[problem.value]}</p>}
        {isKept.value && <p>{OWN_TILES.kept}</p>}
      </div>
      {isKept.value && (
        <p class="row">
          <PageLink app={app} route={{ kind: 'past-round', id: round.summary.id }} button>
            {OWN_TILES.review}
          </PageLink>
          <PageLink app={app} route={{ kind: 'rounds' }}>
            {OWN_TILES.rounds}
          </PageLink>
        </p>
      )}
    </section>
  );
}
