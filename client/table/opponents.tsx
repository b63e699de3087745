// The three opponents as they sit: left, across, right; who gives, who gets, who is ready.
import { DIRECTIONS, type Direction, isWaitingFor, neighbor, type Seat } from '../../shared-engine/index.ts';
import { openPass } from '../room/open-pass.ts';
import type { Seated } from '../room/room.ts';
import { nameOf, positionOf } from '../room/seat-names.ts';
import { BotTag, SeatStatus } from '../room/seat-status.tsx';
import { TABLE } from './strings.ts';

export function Opponents({ seated }: { readonly seated: Seated }) {
  const { you } = seated;
  return (
    <ul class="opponents" aria-label={TABLE.opponents}>
      {DIRECTIONS.toReversed().map((direction) => (
        <Plaque key={direction} seated={seated} seat={neighbor(you, direction)} direction={direction} />
      ))}
    </ul>
  );
}

interface PlaqueProps {
  readonly seated: Seated;
  readonly seat: Seat;
  readonly direction: Direction;
}

function Plaque({ seated, seat, direction }: PlaqueProps) {
  const { table, view, you } = seated;
  const info = table.seats[seat];
  const pass = openPass(view, you);
  const part = pass && tradeWords(pass.to === seat, pass.from === seat);
  const ready = !isWaitingFor(view.stage, seat);
  const away = info.kind === 'person' && !info.present;
  return (
    <li class={`plaque at-${direction}${part && pass?.to === seat ? ' receiver' : ''}`}>
      <p class="plaque-name">
        <b>{nameOf(table, seat)}</b>
        <BotTag info={info} />
        {view.dealer === seat && <span class="east">{TABLE.east}</span>}
      </p>
      <p class="plaque-place">{positionOf(you, seat)}</p>
      <SeatStatus ready={ready} away={away} />
      {part && <p class="plaque-part">{part}</p>}
    </li>
  );
}

function tradeWords(gets: boolean, gives: boolean): string | null {
  if (gets && gives) return TABLE.getsAndGives;
  if (gets) return TABLE.getsYours;
  return gives ? TABLE.givesYou : null;
}
