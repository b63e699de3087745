// One room: its connection, the words about that, and the screen that is due.
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { App } from '../model/app.ts';
import { waitsFor } from '../model/facing.ts';
import type { Room } from '../model/room.ts';
import { type Screen, screenOf } from '../model/screen.ts';
import { ROOM } from '../words/room.ts';
import { CodeField } from './code-field.tsx';
import { LinkBar } from './link-bar.tsx';
import { Lobby } from './lobby.tsx';
import { Mark } from './mark.tsx';
import { ReviewScreen } from './review/review-screen.tsx';
import { TableScreen } from './table-screen.tsx';
import { WatchScreen } from './watch-screen.tsx';

interface RoomScreenProps {
  readonly app: App;
  /** Called once; another room is another screen. */
  readonly open: () => Room;
}

export function RoomScreen({ app, open }: RoomScreenProps) {
  const room = useMemo(open, []);
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
      <header class="room-bar">
        <a
          class="home"
          href="/"
          aria-label={ROOM.home}
          onClick={(event) => {
            event.preventDefault();
            app.go({ kind: 'front' });
          }}
        >
          <Mark />
          <span aria-hidden="true">Quadrille</span>
        </a>
        {table && <p class="room-code">{home === 'page' ? table.code : ROOM.table(table.code)}</p>}
      </header>
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
