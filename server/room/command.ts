// What may be asked of a room, by a person or by the house itself.
import type { Actor, Choice, OpenRoom, Seat, TableAct } from '../../shared-engine/index.ts';
import type { CardChoice } from './event.ts';

/** The opening, with everything the world has to add to it: the checked name and card, the key of the seat. */
export interface Opening {
  readonly door: OpenRoom['door'];
  readonly terms: OpenRoom['terms'];
  readonly bots: OpenRoom['bots'];
  readonly card: CardChoice;
  readonly name: string;
  readonly key: string;
}

/** A person's own seat, as the session knows it. */
export interface Owner {
  readonly seat: Seat;
  readonly since: number;
}

export type RoomCommand =
  /** `seat` null for any free one. */
  | {
      readonly kind: 'take-seat';
      readonly seat: Seat | null;
      readonly name: string;
      readonly key: string;
    }
  /** A person's choice; `seat` is what the frame says, which must be the owner's. */
  | {
      readonly kind: 'choose';
      readonly owner: Owner;
      readonly round: number;
      readonly seat: Seat;
      readonly choice: Choice;
    }
  /** A choice of the house for a seat: its bot, or the stand-in (rule K2). */
  | {
      readonly kind: 'choose-for';
      readonly seat: Seat;
      readonly by: Exclude<Actor, 'owner'>;
      readonly round: number;
      readonly choice: Choice;
    }
  | { readonly kind: 'act'; readonly owner: Owner; readonly act: TableAct }
  /** The next deal, with a fresh secret seed. */
  | { readonly kind: 'deal'; readonly seed: string }
  | { readonly kind: 'close' };
