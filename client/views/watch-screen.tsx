// A watcher's view of a running table: public facts and no tiles.
import { openStep, type Table } from '../../shared-engine/index.ts';
import type { App } from '../model/app.ts';
import type { Room } from '../model/room.ts';
import { WATCH } from '../words/room.ts';
import { STEP_NAMES, wasStopped } from '../words/steps.ts';
import { publicNews } from '../words/watch.ts';
import { Ring } from './ring.tsx';
import { SeatPicker } from './seat-picker.tsx';
import { StepStrip } from './step-strip.tsx';

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
