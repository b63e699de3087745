// Before the first deal: how friends come in, who sits where, and who is ready.
import type { Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { Invite } from '../room/invite.tsx';
import { ReadyPanel } from '../room/ready-panel.tsx';
import type { Room } from '../room/room.ts';
import { SeatPicker } from '../room/seat-picker.tsx';
import { unusualWays } from '../room/term-names.ts';
import { LOBBY_SCREEN } from './strings.ts';

interface LobbyProps {
  readonly app: App;
  readonly room: Room;
  readonly table: Table;
}

export function Lobby({ app, room, table }: LobbyProps) {
  const { notice } = room.state.value;
  const guest = table.you === null;
  const unusual = unusualWays(table.terms);
  return (
    <main class="lobby">
      <h1>{guest ? LOBBY_SCREEN.titleGuest : LOBBY_SCREEN.title}</h1>
      {!guest && <Invite link={app.linkTo({ kind: 'room', code: table.code })} code={table.code} />}
      <SeatPicker app={app} room={room} table={table} />
      <p class="notice" role="alert">
        {notice}
      </p>
      {!guest && <ReadyPanel room={room} table={table} label={LOBBY_SCREEN.ready} />}
      <section class="terms">
        <h2>{LOBBY_SCREEN.terms}</h2>
        <p>
          {LOBBY_SCREEN.card(table.card.name)} {LOBBY_SCREEN.cardHelp[table.terms.cardHelp]}{' '}
          {LOBBY_SCREEN.passLog(table.terms.passLog)} {LOBBY_SCREEN.deadline(table.terms.deadline)}{' '}
          {LOBBY_SCREEN.revealRacks(table.terms.revealRacks)}
        </p>
        {unusual !== '' && <p>{unusual}</p>}
      </section>
    </main>
  );
}
