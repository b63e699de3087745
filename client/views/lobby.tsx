// Before the first deal: how friends come in, who sits where, and who is ready.
import type { Table } from '../../shared-engine/index.ts';
import type { App } from '../model/app.ts';
import type { Room } from '../model/room.ts';
import { LOBBY } from '../words/room.ts';
import { Invite } from './invite.tsx';
import { ReadyPanel } from './ready-panel.tsx';
import { SeatPicker } from './seat-picker.tsx';

interface LobbyProps {
  readonly app: App;
  readonly room: Room;
  readonly table: Table;
}

export function Lobby({ app, room, table }: LobbyProps) {
  const { notice } = room.state.value;
  const guest = table.you === null;
  return (
    <main class="lobby">
      <h1>{guest ? LOBBY.titleGuest : LOBBY.title}</h1>
      {!guest && <Invite link={app.linkTo({ kind: 'room', code: table.code })} code={table.code} />}
      <SeatPicker app={app} room={room} table={table} />
      <p class="notice" role="alert">
        {notice}
      </p>
      {!guest && <ReadyPanel room={room} table={table} wish={LOBBY.ready} />}
      <section class="terms">
        <h2>{LOBBY.terms}</h2>
        <p>
          {LOBBY.card(table.card.name)} {LOBBY.deadline(table.terms.deadline)}{' '}
          {LOBBY.layOpen(table.terms.layOpen)}
        </p>
      </section>
    </main>
  );
}
