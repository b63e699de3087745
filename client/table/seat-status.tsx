// What a seat is doing just now, as a sign and a word.
import { TABLE } from '../room/strings.ts';

interface PlaqueStateProps {
  readonly ready: boolean;
  readonly away: boolean;
}

export function PlaqueState({ ready, away }: PlaqueStateProps) {
  return (
    <p class={ready ? 'plaque-state is-ready' : 'plaque-state'}>
      <svg class="state-sign" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
        {ready ? <path d="M4 10 L8.500 15 L16 5" /> : <circle cx="10" cy="10" r="6" />}
      </svg>
      {away ? TABLE.away : ready ? TABLE.ready : TABLE.choosing}
    </p>
  );
}
