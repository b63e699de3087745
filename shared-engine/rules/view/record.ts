// A seat's record of a round: its own tiles and the public facts of each step, and nothing else (rule V1).
import type { Seat } from '../deal/seat.ts';
import type { Actor } from '../exchange/round.ts';
import type { MoveStep } from '../exchange/schedule.ts';
import type { Terms } from '../exchange/terms.ts';
import type { Face, Four } from '../tiles/face.ts';

/** Public part of a move that is over. */
export interface PublicMove {
  readonly kind: 'move';
  readonly step: MoveStep;
  /** How many tiles each seat passed on blind. */
  readonly blind: Four<number>;
  readonly voided: number;
  readonly by: Four<Actor | null>;
}

/** Public part of a step that is over; a spectator gets exactly this (rule V2). */
export type PublicStep =
  | PublicMove
  | { readonly kind: 'vote'; readonly go: Four<boolean>; readonly by: Four<Actor> }
  | {
      readonly kind: 'ask';
      readonly asked: Four<number>;
      readonly agreed: Four<number>;
      readonly by: Four<Actor>;
    };

/** A move as one seat knows it: with the tiles it gave knowingly and those it received and did not pass on. */
export interface SeatMove extends PublicMove {
  readonly to: Seat;
  readonly from: Seat;
  readonly gave: readonly Face[];
  readonly received: readonly Face[];
}

export type SeatStep = SeatMove | Exclude<PublicStep, { kind: 'move' }>;

/** Enough to analyze every choice of a seat by what the seat knew when it made it. */
export interface SeatRecord {
  readonly seat: Seat;
  readonly dealer: Seat;
  /** By which the round was played, the help on the table among them (rule W6). */
  readonly terms: Terms;
  /** As dealt, in rack order. */
  readonly start: readonly Face[];
  readonly steps: readonly SeatStep[];
  /**
   * In a guided deal `steps` holds the outcomes that the class advanced with; this holds, for each of those, the step
   * as this seat itself played it (rule L2), null where it took no part.
   */
  readonly actualSteps?: readonly (SeatStep | null)[];
}

/** A step as the seat itself played it, with its outcome at the seat's own table; null where it took no part. */
export function actualStep(
  { steps, actualSteps = [] }: Pick<SeatRecord, 'steps' | 'actualSteps'>,
  place: number,
): SeatStep | null {
  return place < actualSteps.length ? actualSteps[place]! : steps[place]!;
}
