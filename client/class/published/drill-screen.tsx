// The page of a published drill as this browser may see it: its teacher's, the list of deals, or a deal at the table.
import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { App } from '../../app/routes/app.ts';
import type { PublishedTables } from '../../room/screen.ts';
import { Bar } from '../../ui/bar.tsx';
import { DealList } from './deal-list.tsx';
import { DrillTable, type Playing } from './drill-table.tsx';
import { LoadFailure } from './load-failure.tsx';
import { isGone } from './rounds.ts';
import { DRILL } from './strings.ts';
import { TeacherPage } from './teacher-page.tsx';
import { useDrill } from './use-drill.ts';

interface DrillScreenProps {
  readonly app: App;
  readonly code: string;
  readonly tables: PublishedTables;
}

export function DrillScreen({ app, code, tables }: DrillScreenProps) {
  const model = useDrill(code, () => app.settings.peek().name);
  const playing = useSignal<Playing | null>(null);
  const leave = useRef(() => {});
  const device = model.device.value;
  const failure = model.failure.value;

  function play(next: Playing) {
    playing.value = next;
    // The step back leads to the list of deals.
    leave.current = app.layOver(() => {
      playing.value = null;
    });
  }
  function stop() {
    playing.value = null;
    leave.current();
  }

  if (device === null || isGone(failure)) {
    return (
      <>
        <Bar app={app} home />
        <main class="quiet">
          {failure === null && <p role="status">{DRILL.opening}</p>}
          {failure !== null && isGone(failure) && (
            <>
              <h1>{DRILL.gone}</h1>
              <p>{DRILL.goneAbout}</p>
            </>
          )}
          {failure !== null && !isGone(failure) && <LoadFailure failure={failure} onRetry={model.load} />}
        </main>
      </>
    );
  }
  if (device.drill.teacher) return <TeacherPage app={app} drill={device.drill} onChanged={model.load} />;
  const now = playing.value;
  if (now === null) return <DealList app={app} model={model} device={device} onPlay={play} />;
  return (
    <DrillTable
      key={`${now.place} ${now.isPractice}`}
      app={app}
      model={model}
      device={device}
      playing={now}
      tables={tables}
      onLeave={stop}
    />
  );
}
