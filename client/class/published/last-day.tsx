// The last day of a published drill as a date; it ends where this device's day does.
import { useSignal } from '@preact/signals';
import { dateAt } from '../model/strings.ts';
import { TEACHER } from './strings.ts';

/** The end of this day by the clock of this device, in milliseconds since 1970; null where it is no day. */
export function endOfDay(date: string): number | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  if (year === undefined) return null;
  return new Date(Number(year), Number(month) - 1, Number(day) + 1).getTime();
}

interface LastDayFieldProps {
  readonly until: number;
  readonly onDay: (until: number) => void;
}

export function LastDayField({ until, onDay }: LastDayFieldProps) {
  const date = useSignal(dateAt(until - 1));
  function set() {
    const day = endOfDay(date.value);
    if (day !== null) onDay(day);
  }
  return (
    <div class="field">
      <label for="drill-last-day">{TEACHER.lastDay}</label>
      <div class="row">
        <input
          id="drill-last-day"
          type="date"
          value={date.value}
          onInput={(event) => {
            date.value = event.currentTarget.value;
          }}
        />
        <button type="button" onClick={set}>
          {TEACHER.setDay}
        </button>
      </div>
    </div>
  );
}
