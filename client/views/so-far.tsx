// What this seat gave and got in the steps that are over, on demand.
import type { Seated } from '../model/room.ts';
import { stepNews } from '../words/news.ts';
import { nameOf } from '../words/people.ts';
import { TABLE } from '../words/room.ts';
import { STEP_NAMES } from '../words/steps.ts';
import { TileRow } from './tile-row.tsx';

export function SoFar({ seated }: { readonly seated: Seated }) {
  const { table, view } = seated;
  const { steps } = view.record;
  return (
    <details class="so-far">
      <summary>{TABLE.soFar}</summary>
      {steps.length === 0 && <p>{TABLE.nothingYet}</p>}
      <ol>
        {steps.map((step, index) => (
          <li key={`${index}-${step.kind}`}>
            {step.kind === 'move' ? (
              <>
                <b>{STEP_NAMES[step.step]}</b>
                <p>
                  {TABLE.gave} {nameOf(table, step.to)} <TileRow tiles={step.gave} />
                </p>
                <p>
                  {TABLE.got} {nameOf(table, step.from)} <TileRow tiles={step.received} />
                </p>
              </>
            ) : (
              <p>{stepNews(table, step)}</p>
            )}
          </li>
        ))}
      </ol>
    </details>
  );
}
