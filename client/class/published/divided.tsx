// The steps at which the players of a published drill are most divided, and a class made of their deals.
import { useSignal } from '@preact/signals';
import {
  type DrillFile,
  type DrillReport,
  dividedSteps,
  drillOfDivided,
  drillSchema,
  type PublishedDashboard,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { rowOfDrill, storeDrill } from '../../storage/history/teaching.ts';
import { newDrillId } from '../model/library.ts';
import { choiceTitle } from '../model/strings.ts';
import { DRILL, TEACHER } from './strings.ts';

interface DividedProps {
  readonly app: App;
  readonly dashboard: PublishedDashboard;
  readonly report: DrillReport;
}

export function Divided({ app, dashboard, report }: DividedProps) {
  const problem = useSignal<string | null>(null);
  const steps = dividedSteps(report.deals);

  async function make() {
    const played = drillSchema.safeParse(dashboard.drill);
    const drill = played.success ? drillOfDivided(steps, played.data) : null;
    if (drill === null) return;
    const file: DrillFile = { drill, ...(dashboard.card === null ? {} : { card: dashboard.card }) };
    const id = newDrillId();
    const stored = await storeDrill(rowOfDrill(file, { id, group: '', ownCard: null }));
    if (stored.ok) app.go({ kind: 'prepare', drill: id });
    else problem.value = TEACHER.notStored;
  }

  return (
    <section aria-labelledby="divided-steps">
      <h2 id="divided-steps">{TEACHER.divided}</h2>
      <p>
        {steps.length > 0 && TEACHER.dividedAbout}
        {steps.length === 0 && TEACHER.dividedNone[dashboard.state === 'withdrawn' ? 'withdrawn' : 'yet']}
      </p>
      <ol>
        {steps.map(({ deal, title, step, kind, players, division }) => {
          const place = dashboard.deals.findIndex(({ id }) => id === deal);
          return (
            <li key={`${deal} ${step} ${kind}`}>
              <b>{choiceTitle({ step, kind })}</b>, {DRILL.deal(place + 1, title)}{' '}
              <span class="aside">{TEACHER.split(players, Math.round(division * 10))}</span>
            </li>
          );
        })}
      </ol>
      {steps.length > 0 && (
        <div class="row">
          <button type="button" onClick={() => void make()}>
            {TEACHER.make}
          </button>
        </div>
      )}
      <p role="alert">{problem.value}</p>
    </section>
  );
}
