// Wanting the next deal: one button, and who is still waited for.
import { SEATS, type Seat, type Table } from '../../shared-engine/index.ts';
import { sentenceList } from '../tiles/tile-names.ts';
import type { Room } from './room.ts';
import { nameOf } from './seat-names.ts';
import { LOBBY } from './strings.ts';

interface ReadyPanelProps {
  readonly room: Room;
  readonly table: Table;
  /** What the button says while the player is not ready. */
  readonly label: string;
}

export function ReadyPanel({ room, table, label }: ReadyPanelProps) {
  const own = table.you === null ? null : table.seats[table.you];
  if (own?.kind !== 'person') return null;
  const others = SEATS.filter((seat) => {
    const info = table.seats[seat];
    return seat !== table.you && info.kind === 'person' && info.present;
  });
  const ready = others.filter((seat) => isReady(table, seat));
  const notReady = others.filter((seat) => !isReady(table, seat));
  const names = (seats: readonly Seat[]) => sentenceList(seats.map((seat) => nameOf(table, seat)));
  return (
    <section class="ready">
      <button
        type="button"
        class={own.ready ? '' : 'primary'}
        onClick={() => room.act({ kind: 'ready', ready: !own.ready })}
      >
        {own.ready ? LOBBY.notReady : label}
      </button>
      <p role="status">
        {own.ready && notReady.length > 0 && LOBBY.waitingFor(names(notReady))}
        {!own.ready && ready.length > 0 && LOBBY.waitForYou(names(ready), ready.length)}
        {!own.ready && ready.length === 0 && notReady.length > 0 && LOBBY.readyAbout}
      </p>
    </section>
  );
}

function isReady({ seats }: Table, seat: Seat): boolean {
  const info = seats[seat];
  return info.kind === 'person' && info.ready;
}

/** People whom the next deal waits for. */
export function notReady({ seats }: Table): readonly Seat[] {
  return SEATS.filter((seat) => {
    const info = seats[seat];
    return info.kind === 'person' && !info.ready;
  });
}
