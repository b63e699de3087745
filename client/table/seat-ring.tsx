// The four seats around a table seen from above, with arrows for the way the tiles go.
import {
  type Direction,
  isWaitingFor,
  MOVES,
  neighbor,
  type SpectatorView,
  type Step,
  stepOf,
  type Table,
} from '../../shared-engine/index.ts';
import { nameOf, placeOf } from '../room/seat-names.ts';
import { DrawnSeat, seatsFrom } from './drawn-seat.tsx';
import { PassingTiles } from './passing-tiles.tsx';
import { SPECTATOR } from './strings.ts';

interface SeatRingProps {
  readonly table: Table;
  readonly view: SpectatorView;
}

export function SeatRing({ table, view }: SeatRingProps) {
  const open = stepOf(view.stage);
  const toward = open && directionOf(open);
  return (
    <div class="ring cloth">
      {toward && <Arrows toward={toward} />}
      <ul>
        {seatsFrom(0).map((seat) => (
          <DrawnSeat
            key={seat}
            table={table}
            view={view}
            seat={seat}
            place={placeOf(seat, 0)}
            ready={open === null ? null : !isWaitingFor(view.stage, seat)}
          >
            {toward && <p class="plaque-part">{SPECTATOR.gives(nameOf(table, neighbor(seat, toward)))}</p>}
          </DrawnSeat>
        ))}
      </ul>
      <PassingTiles round={table.round} steps={view.steps} bottom={0} received={[]} />
    </div>
  );
}

function directionOf(step: Step): Direction | null {
  return step === 'vote' || step === 'courtesy-ask' ? null : MOVES[step].toward;
}

/** Seats follow one another to the right, against the clock: the first sits below, the second at the right. */
function Arrows({ toward }: { readonly toward: Direction }) {
  const turns = toward === 'across' ? [0, 90] : [0, 90, 180, 270];
  const path =
    toward === 'across'
      ? 'M50 12 V88 M42 21 L50 12 L58 21 M42 79 L50 88 L58 79'
      : 'M58 88 Q86 86 88 58 M79 66 L88 57 L95 67';
  return (
    <svg class="ring-arrows" viewBox="0 0 100 100" aria-hidden="true" focusable="false">
      <g transform={toward === 'left' ? 'translate(100 0) scale(-1 1)' : undefined}>
        {turns.map((turn) => (
          <path key={turn} d={path} transform={`rotate(${turn} 50 50)`} />
        ))}
      </g>
    </svg>
  );
}
