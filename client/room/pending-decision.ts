// What the player faces, read off the table: which question is open and whether a choice would be legal.
import {
  bagOf,
  type Choice,
  type Face,
  type Facing,
  giverTo,
  MOVES,
  type MoveStep,
  neighbour,
  objection,
  PASS_SIZE,
  passObjection,
  type RoundRejection,
  type Seat,
  type SeatView,
} from '../../shared-engine/index.ts';

/** What the rules need to know to accept or reject a choice. */
export function facingOfView(view: SeatView, seat: Seat): Facing {
  const { stage } = view;
  const answered = view.answer !== null;
  switch (stage.phase) {
    case 'passing':
      return { phase: 'passing', step: stage.step, rack: bagOf(view.rack), answered };
    case 'voting':
      return { phase: 'voting', answered };
    case 'asking':
      return { phase: 'asking', answered };
    case 'giving':
      return { phase: 'giving', rack: bagOf(view.rack), count: stage.counts[seat], answered };
    case 'closed':
      return { phase: 'closed' };
  }
}

export function objectionTo(view: SeatView, seat: Seat, choice: Choice): RoundRejection | null {
  return objection(facingOfView(view, seat), choice);
}

/** Why this one tile may not go into the tray; the number of tiles is looked at only when passing. */
export function tileObjection(view: SeatView, step: MoveStep, face: Face): RoundRejection | null {
  return passObjection(bagOf(view.rack), step, 1, [face], 0);
}

/** A pass that this seat has to make or has made and that is not settled. */
export interface OpenPass {
  readonly step: MoveStep;
  readonly needed: number;
  readonly to: Seat;
  readonly from: Seat;
  readonly blindAllowed: boolean;
  readonly submitted: boolean;
}

export function openPass(view: SeatView, seat: Seat): OpenPass | null {
  const { stage } = view;
  if (stage.phase !== 'passing' && stage.phase !== 'giving') return null;
  const step = stage.phase === 'passing' ? stage.step : 'courtesy-pass';
  const needed = stage.phase === 'passing' ? PASS_SIZE : stage.counts[seat];
  if (needed === 0) return null;
  const { toward, blind } = MOVES[step];
  return {
    step,
    needed,
    to: neighbour(seat, toward),
    from: giverTo(seat, toward),
    blindAllowed: blind,
    submitted: view.answer !== null,
  };
}

/** Whether the open step waits for this seat. */
export function waitsFor({ stage }: Pick<SeatView, 'stage'>, seat: Seat): boolean {
  switch (stage.phase) {
    case 'passing':
      return !stage.submitted[seat];
    case 'voting':
    case 'asking':
      return !stage.answered[seat];
    case 'giving':
      return stage.counts[seat] > 0 && !stage.submitted[seat];
    case 'closed':
      return false;
  }
}
