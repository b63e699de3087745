// What this seat passed and got in the steps that are over, folded and not drawn until it is opened.
import { useState } from 'preact/hooks';
import type { Face, SeatStep } from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import { nameOf } from '../room/seat-names.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { stepAnnouncement } from './announcements.ts';
import { TABLE } from './strings.ts';

export function History({ seated }: { readonly seated: Seated }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="history" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{TABLE.history}</summary>
      {isOpen && <Steps seated={seated} />}
    </details>
  );
}

function Steps({ seated: { table, view, you } }: { readonly seated: Seated }) {
  const { steps, actualSteps = [] } = view.record;
  if (steps.length === 0) return <p>{TABLE.nothingYet}</p>;
  return (
    <ol>
      {steps.map((step, index) => (
        <li key={`${index}-${step.kind}`}>
          {step.kind === 'move' ? (
            <>
              <b>{STEP_NAMES[step.step]}</b>
              <ChosenInstead chosen={actualSteps[index] ?? null} gave={step.gave} />
              <p>
                {TABLE.gave} {nameOf(table, step.to)} <TileRow tiles={step.gave} />{' '}
                {step.blind[you] > 0 && TABLE.andBlind(step.blind[you])}
              </p>
              <p>
                {TABLE.got} {nameOf(table, step.from)} <TileRow tiles={step.received} />
              </p>
            </>
          ) : (
            <p>{stepAnnouncement(table, step)}</p>
          )}
        </li>
      ))}
    </ol>
  );
}

interface ChosenInsteadProps {
  /** What this seat chose itself, where the class continued from one choice for all. */
  readonly chosen: SeatStep | null;
  readonly gave: readonly Face[];
}

function ChosenInstead({ chosen, gave }: ChosenInsteadProps) {
  if (chosen?.kind !== 'move' || chosen.gave.toSorted().join() === gave.toSorted().join()) return null;
  return (
    <p>
      {TABLE.chosenInstead} <TileRow tiles={chosen.gave} />
    </p>
  );
}
