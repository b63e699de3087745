// What this seat passed and got in the steps that are over, folded and not drawn until it is opened.
import { useState } from 'preact/hooks';
import type { Face, SeatStep } from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import { nameOf } from '../room/seat-names.ts';
import { countWord, STEP_NAMES } from '../room/step-names.ts';
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
              <Moved step={step} blind={step.blind[you]} table={table} />
            </>
          ) : (
            <p>{stepAnnouncement(table, step)}</p>
          )}
        </li>
      ))}
    </ol>
  );
}

interface MovedProps {
  readonly step: Extract<SeatStep, { kind: 'move' }>;
  /** How many tiles this seat passed on blind. */
  readonly blind: number;
  readonly table: Seated['table'];
}

function Moved({ step: { gave, received, to, from, voided }, blind, table }: MovedProps) {
  const wentOn = Math.max(0, blind - voided);
  return (
    <>
      <p>
        {TABLE.gave} {nameOf(table, to)} {(gave.length > 0 || blind === 0) && <TileRow tiles={gave} />}{' '}
        {blind > 0 && TABLE.blindOn(countWord(blind), gave.length)}
      </p>
      <p>
        {TABLE.got} {nameOf(table, from)}{' '}
        {(received.length > 0 || wentOn === 0) && <TileRow tiles={received} />}{' '}
        {wentOn > 0 && TABLE.wentOn(countWord(wentOn), received.length)}
      </p>
    </>
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
