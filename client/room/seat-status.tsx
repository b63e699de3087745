// What stands beside a name at the table: whether it is a bot's, and what the seat is doing, as a sign and a word.
import type { SeatInfo } from '../../shared-engine/index.ts';
import { awayWords } from './seat-names.ts';
import { ROOM } from './strings.ts';

interface SeatStatusProps {
  readonly ready: boolean;
  readonly info: SeatInfo;
}

export function SeatStatus({ ready, info }: SeatStatusProps) {
  const away = awayWords(info);
  return (
    <p class={ready ? 'seat-status is-ready' : 'seat-status'}>
      {/* Whoever is away needs the width for when. */}
      {away === null && (
        <svg class="state-sign" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
          {ready ? <path d="M4 10 L8.500 15 L16 5" /> : <circle cx="10" cy="10" r="6" />}
        </svg>
      )}
      {away ?? <span class="state-word">{ready ? ROOM.ready : ROOM.choosing}</span>}
    </p>
  );
}

export function BotTag({ info }: { readonly info: SeatInfo }) {
  if (info.kind !== 'bot') return null;
  return <span class="bot-tag">{info.external ? ROOM.botBy(info.external.by) : ROOM.bot}</span>;
}
