// A spectator's view of a running table: public facts and no tiles.
import { stepOf, type Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { Room } from '../room/room.ts';
import { SeatPicker } from '../room/seat-picker.tsx';
import { STEP_NAMES, wasStopped } from '../room/step-names.ts';
import { StepStrip } from '../room/step-strip.tsx';
import { WaysFolded } from '../room/ways-panel.tsx';
import { publicAnnouncement } from './public-announcements.ts';
import { SeatRing } from './seat-ring.tsx';
import { SPECTATOR } from './strings.ts';

interface SpectatorScreenProps {
  readonly app: App;
  readonly room: Room;
  readonly table: Table;
}

export function SpectatorScreen({ app, room, table }: SpectatorScreenProps) {
  const { view } = table;
  if (view?.audience !== 'spectator') return null;
  const open = stepOf(view.stage);
  // Who plays without the log must not find it with somebody who watches (rule W6).
  const told = open !== null && !view.terms.passLog ? view.steps.slice(-1) : view.steps;
  return (
    <main class="spectator">
      <div class="progress">
        <StepStrip open={open} stopped={wasStopped(view.steps)} terms={view.terms} />
      </div>
      <h1>{SPECTATOR.title}</h1>
      <p>{open === null ? SPECTATOR.closed : `${SPECTATOR.about} ${SPECTATOR.step(STEP_NAMES[open])}.`}</p>
      <SeatRing table={table} view={view} />
      <ol class="public-steps">
        {told.map((step, index) => (
          <li key={`${index}-${step.kind}`}>{publicAnnouncement(table, step)}</li>
        ))}
      </ol>
      <WaysFolded mode={table.mode} terms={open === null ? table.terms : view.terms} />
      {open === null && <SeatPicker app={app} room={room} table={table} />}
    </main>
  );
}
