// The review of a round of the past, opened again from what this browser stores.
import type { FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import {
  type CompiledCard,
  compileCard,
  type RoundPlay,
  type StoredRound,
  unpackPlay,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { Room } from '../../room/room.ts';
import type { RoomScreenProps } from '../../room/screen.ts';
import { readRound } from '../../storage/history/rounds.ts';
import { Bar } from '../../ui/bar.tsx';
import { HomeLink } from './home-link.tsx';
import { dayName, ROUNDS, STORAGE_PROBLEMS } from './strings.ts';
import './history.css';

interface PastRoundScreenProps {
  readonly app: App;
  readonly id: string;
  /** The page's way to show a room. */
  readonly RoomScreen: FunctionComponent<RoomScreenProps>;
  readonly pastRoom: (round: StoredRound, play: RoundPlay, card: CompiledCard) => Room;
  /** The card of a round that was stored without one; null where it cannot be had. */
  readonly loadCard: (code: string) => Promise<CompiledCard | null>;
}

type Found =
  | { readonly round: StoredRound; readonly play: RoundPlay; readonly card: CompiledCard }
  | string
  | null;

export function PastRoundScreen({ app, id, RoomScreen, pastRoom, loadCard }: PastRoundScreenProps) {
  const [found, setFound] = useState<Found>(null);
  useEffect(() => {
    let mounted = true;
    setFound(null);
    void find(id, loadCard).then((result) => mounted && setFound(result));
    return () => {
      mounted = false;
    };
  }, [id, loadCard]);
  if (found !== null && typeof found !== 'string') {
    const { round, play, card } = found;
    const when = dayName(new Date(round.summary.playedAt));
    return (
      <RoomScreen
        app={app}
        open={() => pastRoom(round, play, card)}
        guide={() => (
          <p class="past-round">
            {ROUNDS.past(when)} <BackLink app={app} />
            {round.summary.place === 'class' && <HomeLink app={app} round={round.summary} />}
          </p>
        )}
      />
    );
  }
  return (
    <>
      <Bar app={app} home />
      <main class="quiet">
        <p role={found === null ? 'status' : 'alert'}>{found ?? ROUNDS.opening}</p>
        <BackLink app={app} />
      </main>
    </>
  );
}

function BackLink({ app }: { readonly app: App }) {
  return (
    <PageLink app={app} route={{ kind: 'rounds' }}>
      {ROUNDS.back}
    </PageLink>
  );
}

async function find(id: string, loadCard: PastRoundScreenProps['loadCard']): Promise<Found> {
  const read = await readRound(id);
  if (!read.ok) return STORAGE_PROBLEMS[read.problem];
  if (read.value === null) return ROUNDS.notHere;
  const { round, card: stored } = read.value;
  const card = stored ? compileCard(stored.file) : await loadCard(round.summary.table);
  if (card === null) return ROUNDS.noCard;
  const play = unpackPlay(round.detail.play);
  return play ? { round, play, card } : ROUNDS.notHere;
}
