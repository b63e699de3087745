// A pupil's own table, with what the teacher does to it said above.
import { useEffect, useMemo } from 'preact/hooks';
import { aimAt } from '../model/aim.ts';
import type { App } from '../model/app.ts';
import { openPass } from '../model/facing.ts';
import { seatedAt } from '../model/room.ts';
import type { Screen } from '../model/screen.ts';
import { RoomScreen, serverRoom } from '../rooms.ts';
import { nameAims } from './requests.ts';
import { PUPIL } from './words.ts';

interface PupilTableProps {
  readonly app: App;
  readonly code: string;
  readonly room: string;
}

export function PupilTable({ app, code, room }: PupilTableProps) {
  const table = useMemo(() => serverRoom(room), [room]);
  useEffect(() => {
    let said = table.state.peek().aims;
    return table.state.subscribe(({ aims, table: now }) => {
      if (aims === said) return;
      said = aims;
      const seated = seatedAt(now);
      const open = seated && openPass(seated.view, seated.you);
      if (!seated || !open) return;
      // An aim that does not arrive is missing from the talk and from nothing else.
      void nameAims(code, { step: open.step, families: aimAt(aims, seated.table.round, open.step) });
    });
  }, [table, code]);
  return <RoomScreen app={app} open={() => table} guide={(screen) => <Word screen={screen} />} />;
}

function Word({ screen }: { readonly screen: Screen }) {
  const led = screen.kind === 'playing' ? screen.seated.table.led : undefined;
  const words = led?.held ? PUPIL.held : led?.standIn ? PUPIL.standIn : null;
  return (
    <p class="led" role="status">
      {words}
    </p>
  );
}
