// What one seat has lived through: its own tiles and the public facts of each step, and nothing else (rule V1).
import type { Seat } from '../deal/seat.ts';
import type { Actor } from '../exchange/round.ts';
import type { MoveStep } from '../exchange/schedule.ts';
import type { Face, Four } from '../tiles/face.ts';

/** Public part of a move that is over. */
export interface PublicMove {
  readonly kind: 'move';
  readonly step: MoveStep;
  /** How many tiles each seat passed on unseen. */
  readonly blind: Four<number>;
  readonly voided: number;
  readonly by: Four<Actor | null>;
}

/** Public part of a step that is over; a watcher gets exactly this (rule V2). */
export type PublicStep =
  | PublicMove
  | { readonly kind: 'vote'; readonly go: Four<boolean>; readonly by: Four<Actor> }
  | {
      readonly kind: 'ask';
      readonly asked: Four<number>;
      readonly agreed: Four<number>;
      readonly by: Four<Actor>;
    };

/** A move as one seat knows it: with the tiles it gave knowingly and the tiles that stayed with it. */
export interface SeatMove extends PublicMove {
  readonly to: Seat;
  readonly from: Seat;
  readonly gave: readonly Face[];
  readonly received: readonly Face[];
}

export type SeatStep = SeatMove | Exclude<PublicStep, { kind: 'move' }>;

/** Enough to judge every choice of a seat from what it knew when it made it. */
export interface SeatRecord {
  readonly seat: Seat;
  readonly dealer: Seat;
  /** As dealt, in rack order. */
  readonly start: readonly Face[];
  readonly steps: readonly SeatStep[];
  /**
   * In a class that plays one line `steps` is how the class went on; here is, for each step it has gone on from, what
   * this seat itself did (rule L2): null where it had no part in it.
   */
  readonly actualSteps?: readonly (SeatStep | null)[];
}

/** What the seat itself did at a step of its record, and what came of that; null where it had no part in it. */
export function actualStep(
  { steps, actualSteps = [] }: Pick<SeatRecord, 'steps' | 'actualSteps'>,
  place: number,
): SeatStep | null {
  return place < actualSteps.length ? actualSteps[place]! : steps[place]!;
}
