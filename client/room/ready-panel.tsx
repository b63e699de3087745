// Wanting the next deal: one button, and who is still waited for.
import { SEATS, type Table } from '../../shared-engine/index.ts';
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
    return seat !== table.you && info.kind === 'person' && info.present && !info.ready;
  });
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
        {own.ready && others.length > 0
          ? LOBBY.waitingFor(sentenceList(others.map((seat) => nameOf(table, seat))))
          : others.length > 0
            ? LOBBY.readyAbout
            : null}
      </p>
    </section>
  );
}
