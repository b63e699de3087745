// What to teach next: the costliest kinds of mistake, racks on which they were made, and a drill of each.
import { useSignal } from '@preact/signals';
import { type DrillFile, drillOfPoint, type TeachingPoint, teachNext } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { randomHex } from '../../connection/random.ts';
import { rowOfDrill, storeDrill } from '../../storage/history/teaching.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { newDrillId, storedDrill } from '../model/library.ts';
import { playerCount, stepTitle } from '../model/strings.ts';
import { PLAN } from './strings.ts';
import type { KnownReport } from './use-report.ts';

/** Racks shown of one kind; its drill has more. */
const SHOWN = 2;

interface TeachingPlanProps {
  readonly app: App;
  readonly known: KnownReport;
}

export function TeachingPlan({ app, known: { report, row } }: TeachingPlanProps) {
  const problem = useSignal<string | null>(null);
  const points = teachNext(report.deals);
  const pending = report.deals.some((deal) => deal.pending > 0);
  const played = row === null || row.drill === null ? null : storedDrill(row.drill);

  async function make(point: TeachingPoint) {
    const drill = drillOfPoint(point, played?.drill ?? null, () => randomHex(32));
    if (drill === null) return;
    const file: DrillFile = { drill, ...(played?.card && { card: played.card }) };
    const id = newDrillId();
    const stored = await storeDrill(rowOfDrill(file, { id, group: row?.group ?? '', ownCard: null }));
    if (stored.ok) app.go({ kind: 'prepare', drill: id });
    else problem.value = PLAN.notStored;
  }

  return (
    <section class="teaching-plan" aria-labelledby="plan-title">
      <h2 id="plan-title">{PLAN.title}</h2>
      {pending && <p role="status">{PLAN.pending}</p>}
      {!pending && points.length === 0 && <p>{PLAN.nothing}</p>}
      <ol>
        {points.map((point) => (
          <li key={point.category}>
            <h3>{point.label}</h3>
            <p>{PLAN.cost(point.choices, point.totalWinsLost.toFixed(1))}</p>
            {point.examples.slice(0, SHOWN).map((example) => (
              <Example key={`${example.rack.join()} ${example.chosen.join()}`} example={example} />
            ))}
            {point.examples.length === 0 && <p class="aside">{PLAN.noRack}</p>}
            {(point.examples.length > 0 || played !== null) && (
              <button type="button" class="not-printed" onClick={() => void make(point)}>
                {PLAN.make}
              </button>
            )}
          </li>
        ))}
      </ol>
      <p role="alert">{problem.value}</p>
    </section>
  );
}

function Example({ example }: { readonly example: TeachingPoint['examples'][number] }) {
  const { step, rack, chosen, players, better, why } = example;
  return (
    <div class="plan-example">
      <p>
        {stepTitle(step)}: <TileRow tiles={rack} />
      </p>
      <p>
        {PLAN.chosen(playerCount(players))} <TileRow tiles={chosen} /> {PLAN.better}{' '}
        <TileRow tiles={better} />
      </p>
      <p>{why}</p>
    </div>
  );
}
