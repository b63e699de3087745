// A watcher's view of a running table: public facts and no tiles.
import { openStep, type Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { Room } from '../room/room.ts';
import { SeatPicker } from '../room/seat-picker.tsx';
import { STEP_NAMES, wasStopped } from '../room/step-names.ts';
import { StepStrip } from '../room/step-strip.tsx';
import { WATCH } from '../room/strings.ts';
import { publicNews } from './public-announcements.ts';
import { Ring } from './seat-ring.tsx';

interface WatchScreenProps {
  readonly app: App;
  readonly room: Room;
  readonly table: Table;
}

export function WatchScreen({ app, room, table }: WatchScreenProps) {
  const { view } = table;
  if (view?.audience !== 'watcher') return null;
  const open = openStep(view.stage);
  return (
    <main class="watch">
      <div class="progress">
        <StepStrip open={open} stopped={wasStopped(view.steps)} />
      </div>
      <h1>{WATCH.title}</h1>
      <p>{open === null ? WATCH.closed : `${WATCH.about} ${WATCH.step(STEP_NAMES[open])}.`}</p>
      <Ring table={table} view={view} />
      <ol class="public-steps">
        {view.steps.map((step, index) => (
          <li key={`${index}-${step.kind}`}>{publicNews(table, step)}</li>
        ))}
      </ol>
      {open === null && <SeatPicker app={app} room={room} table={table} />}
    </main>
  );
}
