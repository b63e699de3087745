// The three opponents as they sit: left, across, right; who gives, who gets, who is ready.
import { DIRECTIONS, isWaitingFor, neighbor } from '../../shared-engine/index.ts';
import { openPass } from '../room/open-pass.ts';
import type { Seated } from '../room/room.ts';
import { placeOf, positionOf } from '../room/seat-names.ts';
import { DrawnSeat } from './drawn-seat.tsx';
import { TABLE } from './strings.ts';

export function Opponents({ seated }: { readonly seated: Seated }) {
  const { table, view, you } = seated;
  // A table that the teacher has stopped asks nothing of anybody.
  const held = table.controls?.held === true;
  const pass = held ? null : openPass(view, you);
  return (
    <ul class="opponents" aria-label={TABLE.opponents}>
      {DIRECTIONS.toReversed().map((direction) => {
        const seat = neighbor(you, direction);
        const part = pass && tradeWords(pass.to === seat, pass.from === seat);
        return (
          <DrawnSeat
            key={direction}
            table={table}
            view={view}
            seat={seat}
            place={placeOf(seat, you)}
            ready={held ? null : !isWaitingFor(view.stage, seat)}
            receives={pass?.to === seat}
          >
            <p class="plaque-place">{positionOf(you, seat)}</p>
            {part && <p class="plaque-part">{part}</p>}
          </DrawnSeat>
        );
      })}
    </ul>
  );
}

function tradeWords(gets: boolean, gives: boolean): string | null {
  if (gets && gives) return TABLE.getsAndGives;
  if (gets) return TABLE.getsYours;
  return gives ? TABLE.givesYou : null;
}
