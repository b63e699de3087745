// What a seat is doing just now, as a sign and a word.
import { TABLE } from './strings.ts';

interface SeatStatusProps {
  readonly ready: boolean;
  readonly away: boolean;
}

export function SeatStatus({ ready, away }: SeatStatusProps) {
  return (
    <p class={ready ? 'seat-status is-ready' : 'seat-status'}>
      <svg class="state-sign" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
        {ready ? <path d="M4 10 L8.500 15 L16 5" /> : <circle cx="10" cy="10" r="6" />}
      </svg>
      {away ? TABLE.away : ready ? TABLE.ready : TABLE.choosing}
    </p>
  );
}
