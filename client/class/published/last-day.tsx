// The last day of a published drill as a date; it ends where this device's day does.
import { useSignal } from '@preact/signals';
import { dateAt, endOfDay } from '../model/strings.ts';
import { TEACHER } from './strings.ts';

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
