// The lobby as its host and as a guest see it, and sheets with little and with much in them.

import type { Table } from '../../../shared-engine/index.ts';
import { Lobby } from '../../table/lobby.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { Part } from './frame.tsx';
import { appAt, roomAt } from './stage.ts';

export function LobbyPart({ dealt }: { readonly dealt: Table }) {
  const table: Table = {
    ...dealt,
    mode: 'friends',
    round: 0,
    view: null,
    seats: [
      { kind: 'person', name: 'Ines', present: true, ready: false, host: true },
      { kind: 'person', name: 'Bartholomea Featherstone', present: true, ready: true, host: false },
      { kind: 'empty' },
      { kind: 'bot', name: 'Odo', style: 'guarded' },
    ],
  };
  const app = appAt('/t/Q7MK3XWD');
  return (
    <>
      <Part name="lobby-host">
        <Lobby app={app} room={roomAt(table)} table={table} />
      </Part>
      <Part name="lobby-guest">
        <Lobby app={app} room={roomAt({ ...table, you: null })} table={{ ...table, you: null }} />
      </Part>
    </>
  );
}

/** A sheet covers everything else, so each has a page of its own. */
export function SheetAlone({ long }: { readonly long: boolean }) {
  const words = 'Tiles go right, across and left; then all four vote whether they go round once more.';
  return (
    <Sheet
      title={long ? 'A sheet with more in it than a phone shows at once' : 'Settings'}
      onClose={() => {}}
    >
      {Array.from({ length: long ? 40 : 2 }, (_, nth) => (
        <p key={nth}>{words}</p>
      ))}
    </Sheet>
  );
}
