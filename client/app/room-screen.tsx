// One room: its connection, the words about that, and the screen that is due.
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { ReviewScreen } from '../review/review-screen.tsx';
import { CodeField } from '../room/code-field.tsx';
import { waitsFor } from '../room/pending-decision.ts';
import type { Room } from '../room/room.ts';
import { type Screen, screenOf } from '../room/screen.ts';
import { ROOM } from '../room/strings.ts';
import { LinkBar } from '../table/connection-bar.tsx';
import { Lobby } from '../table/lobby.tsx';
import { soundsOf } from '../table/sounds.ts';
import { WatchScreen } from '../table/spectator-screen.tsx';
import { TableScreen } from '../table/table-screen.tsx';
import { Bar } from '../ui/bar.tsx';
import { LedWaiting } from './class-waiting.tsx';
import type { App } from './routes/app.ts';

interface RoomScreenProps {
  readonly app: App;
  /** Called once; another room is another screen. */
  readonly open: () => Room;
  /** Said above the screen that is due, where somebody is being shown how it goes. */
  readonly guide?: (screen: Screen) => ComponentChildren;
}

export function RoomScreen({ app, open, guide }: RoomScreenProps) {
  const room = useMemo(open, []);
  const { sort, sound } = app.settings.value;
  const sorted = useRef(sort);
  useEffect(() => {
    if (sorted.current !== sort) room.sortBy(sort);
    sorted.current = sort;
  }, [room, sort]);
  useEffect(() => (sound ? soundsOf(room) : undefined), [room, sound]);
  useEffect(() => {
    room.reconnect();
    const hurry = () => room.hurry();
    window.addEventListener('online', hurry);
    document.addEventListener('visibilitychange', hurry);
    return () => {
      window.removeEventListener('online', hurry);
      document.removeEventListener('visibilitychange', hurry);
      room.leavePage();
    };
  }, [room]);

  const { table, link, kept, home } = room.state.value;
  const screen = screenOf(table, link);
  const title = titleOf(screen);
  useEffect(() => {
    document.title = title;
    return () => {
      document.title = ROOM.product;
    };
  }, [title]);
  return (
    <div class="room">
      <Bar app={app} home>
        {table && (
          <p class="room-code">
            {home === 'server' && <span class="room-word">{ROOM.table} </span>}
            {table.code}
          </p>
        )}
      </Bar>
      <LinkBar
        state={link}
        kept={kept}
        seen={table !== null}
        onButton={() => {
          if (link.kind === 'waiting') room.hurry();
          else if (link.kind === 'ended' && link.why === 'no-room') app.go({ kind: 'front' });
          else if (link.kind === 'ended' && link.why === 'outdated') window.location.reload();
          else room.reconnect();
        }}
      />
      {guide?.(screen)}
      <Due app={app} room={room} screen={screen} />
      <Speaker news={room.state.value.news} />
    </div>
  );
}

/** What the tab says, so that a player elsewhere sees when the table waits. */
function titleOf(screen: Screen): string {
  if (screen.kind !== 'playing') return ROOM.product;
  const { view, you } = screen.seated;
  return `${waitsFor(view, you) ? ROOM.yourTurn : ROOM.othersTurn} · ${ROOM.product}`;
}

function Due({ app, room, screen }: { readonly app: App; readonly room: Room; readonly screen: Screen }) {
  switch (screen.kind) {
    case 'opening':
      return (
        <main class="quiet">
          <p role="status">{ROOM.opening}</p>
        </main>
      );
    case 'gone':
      return (
        <main class="quiet">
          <h1>{ROOM.gone}</h1>
          <p>{ROOM.goneAbout}</p>
          <CodeField onCode={(code) => app.go({ kind: 'room', code })} />
        </main>
      );
    case 'lobby':
      if (screen.table.led) return <LedWaiting />;
      return <Lobby app={app} room={room} table={screen.table} />;
    case 'playing':
      return <TableScreen room={room} seated={screen.seated} />;
    case 'closed':
      return <ReviewScreen app={app} room={room} seated={screen.seated} />;
    case 'watching':
      return <WatchScreen app={app} room={room} table={screen.table} />;
  }
}

/** Speaks each piece of news once, whichever screen is up. */
function Speaker({ news }: { readonly news: readonly string[] }) {
  const turn = useRef({ news, count: 0 });
  // The same sentence twice in a row is still two events; a new key makes it heard again.
  if (turn.current.news !== news) turn.current = { news, count: turn.current.count + 1 };
  return (
    <div class="spoken" aria-live="polite">
      <p key={turn.current.count}>{news.join(' ')}</p>
    </div>
  );
}
