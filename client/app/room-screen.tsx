// One room: its connection, what is said about that, and the screen that is due.

import { useEffect, useMemo, useRef } from 'preact/hooks';
import { isWaitingFor, tilesGone } from '../../shared-engine/index.ts';
import { CardPanel } from '../cards/card-panel.tsx';
import { ReviewScreen } from '../review/review-screen.tsx';
import { CodeField } from '../room/code-field.tsx';
import { isCardClosed, type Room } from '../room/room.ts';
import { type RoomScreenProps, type Screen, screenOf } from '../room/screen.ts';
import { ROOM } from '../room/strings.ts';
import { ConnectionBar } from '../table/connection-bar.tsx';
import { Lobby } from '../table/lobby.tsx';
import { showNotices } from '../table/notices.ts';
import { playSounds } from '../table/sounds.ts';
import { SpectatorScreen } from '../table/spectator-screen.tsx';
import { TableScreen } from '../table/table-screen.tsx';
import { Bar } from '../ui/bar.tsx';
import { ROOM_SCREEN } from './room-strings.ts';
import type { App } from './routes/app.ts';
import '../tiles/tiles.css';
import '../room/room.css';
import './lobby.css';
import '../table/table.css';
import '../table/drawn-seats.css';
import '../table/passing-tiles.css';
import '../table/seat-ring.css';
import '../table/question.css';
import '../table/rack.css';
import '../table/table-narrow.css';
import '../table/table-low.css';
import '../table/table-large.css';
import '../cards/card.css';
import '../review/review.css';
import '../review/choice-strip.css';
import '../review/round-walk.css';
import '../review/deep-analysis.css';

export function RoomScreen({ app, open, guide }: RoomScreenProps) {
  const room = useMemo(open, []);
  const { sort, sound, notices } = app.settings.value;
  const sorted = useRef(sort);
  useEffect(() => {
    if (sorted.current !== sort) room.sortBy(sort);
    sorted.current = sort;
  }, [room, sort]);
  useEffect(() => (notices ? showNotices(room) : undefined), [room, notices]);
  useEffect(() => (sound ? playSounds(room) : undefined), [room, sound]);
  useEffect(() => {
    room.reconnect();
    const retry = () => room.retryNow();
    window.addEventListener('online', retry);
    document.addEventListener('visibilitychange', retry);
    return () => {
      window.removeEventListener('online', retry);
      document.removeEventListener('visibilitychange', retry);
      room.close();
    };
  }, [room]);

  const { table, connection, pendingCount, home, cardOpen } = room.state.value;
  const screen = screenOf(table, connection);
  const title = titleOf(screen);
  useEffect(() => {
    document.title = title;
    return () => {
      document.title = ROOM.product;
    };
  }, [title]);
  const over = isCardOver(screen, cardOpen);
  useEffect(() => (over ? app.layOver(() => room.showCard(false)) : undefined), [app, room, over]);
  return (
    <div class="room">
      <Bar app={app} home>
        {table && (
          <p class="room-code" title={home === 'server' ? undefined : table.code}>
            {home === 'server' && <span class="room-word">{ROOM.table} </span>}
            {table.code}
          </p>
        )}
      </Bar>
      <ConnectionBar
        state={connection}
        pendingCount={pendingCount}
        seen={table !== null}
        canPlayOn={room.canPlayOn()}
        onPlayOn={room.playOn}
        onButton={() => {
          if (connection.kind === 'waiting') room.retryNow();
          else if (connection.kind === 'here') room.backToServer();
          else if (connection.kind === 'ended' && connection.reason === 'no-room') app.go({ kind: 'front' });
          else if (connection.kind === 'ended' && connection.reason === 'outdated') window.location.reload();
          else room.reconnect();
        }}
      />
      {guide?.(screen)}
      <CurrentScreen app={app} room={room} screen={screen} />
      <LiveRegion sentences={room.state.value.announcements} />
    </div>
  );
}

/** Whether the card lies over the table, or beside it. */
function isCardOver(screen: Screen, cardOpen: boolean): boolean {
  return screen.kind === 'playing' && cardOpen && !isCardClosed(screen.seated);
}

/** What the tab says, so that a player elsewhere sees when the table waits. */
function titleOf(screen: Screen): string {
  if (screen.kind !== 'playing') return ROOM.product;
  const { view, you } = screen.seated;
  return `${isWaitingFor(view.stage, you) ? ROOM_SCREEN.yourTurn : ROOM_SCREEN.othersTurn} · ${ROOM.product}`;
}

function CurrentScreen({
  app,
  room,
  screen,
}: {
  readonly app: App;
  readonly room: Room;
  readonly screen: Screen;
}) {
  switch (screen.kind) {
    case 'opening':
      return (
        <main class="quiet">
          <p role="status">{room.state.value.notice ?? ROOM.opening}</p>
        </main>
      );
    case 'gone':
      return (
        <main class="quiet">
          <h1>{ROOM_SCREEN.gone}</h1>
          <p>{ROOM_SCREEN.goneAbout}</p>
          <CodeField onCode={(code) => app.go({ kind: 'room', code })} />
        </main>
      );
    case 'lobby':
      if (screen.table.controls) return <ClassWaiting />;
      return <Lobby app={app} room={room} table={screen.table} />;
    case 'playing':
      return (
        <TableScreen
          room={room}
          seated={screen.seated}
          card={
            <CardPanel
              load={room.loadCard}
              rack={screen.seated.view.rack}
              nearestFirst={screen.seated.view.terms.cardHelp === 'nearest'}
              gone={tilesGone(screen.seated.view.record)}
              onClose={() => room.showCard(false)}
            />
          }
        />
      );
    case 'closed':
      return <ReviewScreen app={app} room={room} seated={screen.seated} />;
    case 'spectating':
      return <SpectatorScreen app={app} room={room} table={screen.table} />;
  }
}

/** At a table of a class before its first deal. */
function ClassWaiting() {
  return (
    <main class="quiet">
      <h1>{ROOM_SCREEN.classWaiting}</h1>
      <p>{ROOM_SCREEN.classWaitingAbout}</p>
    </main>
  );
}

/** Has each announcement read out once, whichever screen is shown. */
function LiveRegion({ sentences }: { readonly sentences: readonly string[] }) {
  const turn = useRef({ sentences, count: 0 });
  // The same sentence twice in a row is still two events; a new key makes it heard again.
  if (turn.current.sentences !== sentences) turn.current = { sentences, count: turn.current.count + 1 };
  return (
    <div class="spoken" aria-live="polite">
      <p key={turn.current.count}>{sentences.join(' ')}</p>
    </div>
  );
}
