// The four seats before a deal: take one, and for the host put bots on the others.
import { useSignal } from '@preact/signals';
import { SEATS, type Seat, type SeatInfo, STYLES, type Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { claimSeat } from '../connection/api.ts';
import { capitalize } from '../tiles/tile-names.ts';
import { NameField } from '../ui/name-field.tsx';
import { BotInvitation, isFree, isInvited } from './bot-invitation.tsx';
import type { Room } from './room.ts';
import { nameOf, placeOf, positionOf, seatStatus } from './seat-names.ts';
import { BotTag } from './seat-status.tsx';
import { LOBBY, OWN_BOT } from './strings.ts';
import { STYLE_NAMES } from './term-names.ts';

interface SeatPickerProps {
  readonly app: App;
  readonly room: Room;
  readonly table: Table;
}

export function SeatPicker({ app, room, table }: SeatPickerProps) {
  const problem = useSignal<string | null>(null);
  const askName = useSignal(false);
  const own = table.you === null ? null : table.seats[table.you];
  const host = own?.kind === 'person' && own.host;
  const name = app.settings.value.name.trim();

  async function sit(seat: Seat) {
    if (name === '') {
      askName.value = true;
      return;
    }
    const answer = await claimSeat(table.code, { name, seat });
    problem.value = answer.ok ? null : answer.message;
    if (answer.ok) room.reconnect();
  }

  return (
    <section class="seats" aria-labelledby="seats-title">
      <h2 id="seats-title">{LOBBY.seats}</h2>
      {table.you === null && (
        <NameField
          value={app.settings.value.name}
          missing={askName.value && name === ''}
          onChange={(next) => app.change({ name: next })}
        />
      )}
      <p class="notice" role="alert">
        {problem.value}
      </p>
      <ul class="seat-list">
        {SEATS.map((seat) => (
          <li
            key={seat}
            class={`seat at-${placeOf(seat, table.you ?? 0)}${seat === table.you ? ' own' : ''}`}
          >
            <SeatLine
              info={table.seats[seat]}
              place={table.you === null ? null : positionOf(table.you, seat)}
            />
            {table.you === null && isFree(table.seats[seat]) && (
              <button type="button" class="primary" onClick={() => void sit(seat)}>
                {LOBBY.sit}
              </button>
            )}
            <SwapButton room={room} table={table} seat={seat} isHost={host} />
            {host && seat !== table.you && <HostVerbs room={room} seat={seat} info={table.seats[seat]} />}
            {host && isInvited(table.seats[seat]) && (
              <button type="button" onClick={() => room.act({ kind: 'revoke-invitation', seat })}>
                {OWN_BOT.revoke}
              </button>
            )}
          </li>
        ))}
      </ul>
      {host && room.state.value.home === 'server' && (
        <BotInvitation table={table} tableLink={app.linkTo({ kind: 'room', code: table.code })} />
      )}
    </section>
  );
}

interface SwapButtonProps {
  readonly room: Room;
  readonly table: Table;
  readonly seat: Seat;
  readonly isHost: boolean;
}

/** Before the first deal: to a seat that nobody holds, and for the host to any. */
function SwapButton({ room, table, seat, isHost }: SwapButtonProps) {
  const info = table.seats[seat];
  const isHeld = info.kind === 'person' || (info.kind === 'bot' && info.external !== undefined);
  if (table.you === null || seat === table.you || table.round > 0 || (isHeld && !isHost)) return null;
  return (
    <button type="button" onClick={() => room.act({ kind: 'swap-seats', seat })}>
      {isHeld ? LOBBY.swap(nameOf(table, seat)) : LOBBY.moveHere}
    </button>
  );
}

function SeatLine({ info, place }: { readonly info: SeatInfo; readonly place: string | null }) {
  return (
    <p class="seat-line">
      <span class="seat-name">
        <b>{info.kind === 'empty' ? LOBBY.free : info.name}</b> <BotTag info={info} />
      </span>
      <span>
        {info.kind === 'empty' ? freeWords(info) : seatStatus(info)}
        {info.kind === 'bot' && isInvited(info) && `, ${LOBBY.freeInvited}`}
        {place && `, ${place}`}
        {info.kind === 'person' && info.ready && ', ready'}
      </span>
    </p>
  );
}

function freeWords({ invited }: SeatInfo & { kind: 'empty' }): string {
  return invited ? LOBBY.freeInvited : LOBBY.freeAbout;
}

interface HostVerbsProps {
  readonly room: Room;
  readonly seat: Seat;
  readonly info: SeatInfo;
}

function HostVerbs({ room, seat, info }: HostVerbsProps) {
  const style = useSignal(info.kind === 'bot' ? info.style : 'typical');
  if (info.kind === 'person' || (info.kind === 'bot' && info.external)) {
    return (
      <button type="button" onClick={() => room.act({ kind: 'unseat', seat })}>
        {LOBBY.unseat(info.name)}
      </button>
    );
  }
  return (
    <div class="row">
      <select
        aria-label={LOBBY.botStyle(`seat ${seat + 1}`)}
        value={style.value}
        onChange={(event) => {
          const chosen = STYLES.find((known) => known === event.currentTarget.value);
          if (!chosen) return;
          style.value = chosen;
          if (info.kind === 'bot') room.act({ kind: 'seat-bot', seat, style: chosen });
        }}
      >
        {STYLES.map((known) => (
          <option key={known} value={known}>
            {capitalize(STYLE_NAMES[known].name)}
          </option>
        ))}
      </select>
      {info.kind === 'bot' ? (
        <button type="button" onClick={() => room.act({ kind: 'unseat', seat })}>
          {LOBBY.unseat(info.name)}
        </button>
      ) : (
        <button type="button" onClick={() => room.act({ kind: 'seat-bot', seat, style: style.value })}>
          {LOBBY.seatBot}
        </button>
      )}
    </div>
  );
}
