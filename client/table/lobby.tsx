// Before the first deal: how friends come in, who sits where, and who is ready.
import type { Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { ClubListing, mayList } from '../room/club-listing.tsx';
import { Invite } from '../room/invite.tsx';
import { notReady, ReadyPanel } from '../room/ready-panel.tsx';
import type { Room } from '../room/room.ts';
import { SeatPicker } from '../room/seat-picker.tsx';
import { TableTalk } from '../room/table-talk.tsx';
import { WaysPanel } from '../room/ways-panel.tsx';
import { LOBBY_SCREEN } from './strings.ts';

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
      <h1>{guest ? LOBBY_SCREEN.titleGuest : LOBBY_SCREEN.title}</h1>
      {!guest && <Invite link={app.linkTo({ kind: 'room', code: table.code })} code={table.code} />}
      <WaysPanel room={room} table={table} />
      <SeatPicker app={app} room={room} table={table} />
      {mayList(table) && <ClubListing table={table} />}
      <p class="notice" role="alert">
        {notice}
      </p>
      {!guest && <ReadyPanel room={room} table={table} label={LOBBY_SCREEN.ready} />}
      <TableTalk room={room} table={table} waiting={notReady(table)} />
    </main>
  );
}
