// The pass that the open step asks of this seat: how many tiles, to whom, from whom, and what may go into the tray.
import {
  bagOf,
  decisionFor,
  type Face,
  giverTo,
  MOVES,
  type MoveStep,
  neighbor,
  passObjection,
  type RoundRejection,
  type Seat,
  type SeatView,
} from '../../shared-engine/index.ts';

export interface OpenPass {
  readonly step: MoveStep;
  /** Tiles to pass, those passed blind among them. */
  readonly needed: number;
  readonly to: Seat;
  readonly from: Seat;
  readonly blindAllowed: boolean;
  readonly submitted: boolean;
}

/** Null where the open step asks for no pass of this seat. */
export function openPass(view: SeatView, seat: Seat): OpenPass | null {
  const decision = decisionFor(view.stage, seat, view.terms);
  if (decision?.kind !== 'pass') return null;
  const { step, count, blindAllowed } = decision;
  const { toward } = MOVES[step];
  return {
    step,
    needed: count,
    to: neighbor(seat, toward),
    from: giverTo(seat, toward),
    blindAllowed,
    submitted: view.answer !== null,
  };
}

/** Why this one tile may not go into the tray; the number of tiles is checked only when passing. */
export function tileObjection(view: SeatView, face: Face): RoundRejection | null {
  return passObjection(bagOf(view.rack), { count: 1, blindAllowed: false }, [face], 0);
}
