// The last day of a published drill as a date; it ends where this device's day does.
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { dateAt, endOfDay } from '../model/strings.ts';
import { TEACHER } from './strings.ts';

interface DayFieldProps {
  readonly id: string;
  readonly label: string;
  readonly date: string;
  /** Why the server does not take this day; said where it is chosen. */
  readonly problem: string | null;
  readonly onDate: (date: string) => void;
  readonly children?: ComponentChildren;
}

export function DayField({ id, label, date, problem, onDate, children }: DayFieldProps) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="row">
        <input
          id={id}
          type="date"
          value={date}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-problem`}
          onInput={(event) => onDate(event.currentTarget.value)}
        />
        {children}
      </div>
      <p id={`${id}-problem`} class="notice" role="alert">
        {problem}
      </p>
    </div>
  );
}

interface LastDayFieldProps {
  readonly until: number;
  readonly problem: string | null;
  readonly onDay: (until: number) => void;
}

export function LastDayField({ until, problem, onDay }: LastDayFieldProps) {
  const date = useSignal(dateAt(until - 1));
  function set() {
    const day = endOfDay(date.value);
    if (day !== null) onDay(day);
  }
  return (
    <DayField
      id="drill-last-day"
      label={TEACHER.lastDay}
      date={date.value}
      problem={problem}
      onDate={(next) => {
        date.value = next;
      }}
    >
      <button type="button" onClick={set}>
        {TEACHER.setDay}
      </button>
    </DayField>
  );
}
