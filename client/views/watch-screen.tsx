// A watcher's view of a running table: public facts and no tiles.
import { openStep, SEATS, type Table } from '../../shared-engine/index.ts';
import type { App } from '../model/app.ts';
import { waitsFor } from '../model/facing.ts';
import type { Room } from '../model/room.ts';
import { nameOf } from '../words/people.ts';
import { TABLE, WATCH } from '../words/room.ts';
import { STEP_NAMES, wasStopped } from '../words/steps.ts';
import { publicNews } from '../words/watch.ts';
import { BotTag } from './bot-tag.tsx';
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
      <ul class="others four">
        {SEATS.map((seat) => (
          <li key={seat} class="plaque">
            <p class="plaque-name">
              <b>{nameOf(table, seat)}</b>
              <BotTag info={table.seats[seat]} />
              {view.dealer === seat && <span class="east">{TABLE.east}</span>}
            </p>
            {open !== null && <span>{waitsFor(view, seat) ? TABLE.choosing : TABLE.ready}</span>}
          </li>
        ))}
      </ul>
      <ol class="public-steps">
        {view.steps.map((step, index) => (
          <li key={`${index}-${step.kind}`}>{publicNews(table, step)}</li>
        ))}
      </ol>
      {open === null && <SeatPicker app={app} room={room} table={table} />}
    </main>
  );
}
