// What may be asked of a room, by a person or by the house itself.
import type {
  Actor,
  Choice,
  Four,
  OpenRoom,
  PageLine,
  PreparedDeal,
  Seat,
  Settled,
  StyleName,
  TableAct,
} from '../../shared-engine/index.ts';
import type { CardChoice } from './card-choice.ts';
import type { Lead } from './lead.ts';

/** The opening, with everything the world has to add to it: the checked name and card, the key of the seat. */
export interface Opening {
  readonly door: OpenRoom['door'];
  readonly terms: OpenRoom['terms'];
  readonly bots: OpenRoom['bots'];
  readonly card: CardChoice;
  readonly name: string;
  readonly key: string;
}

/** A table of a class: pupils and bots come to it by the class alone. */
export interface ClassOpening {
  readonly door: 'class';
  readonly terms: OpenRoom['terms'];
  readonly card: CardChoice;
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
  /** A connection of the owner's opened at this server, or is over. */
  | {
      readonly kind: 'come';
      readonly owner: Owner;
      readonly node: string;
      readonly line: string;
      readonly from?: PageLine;
    }
  | { readonly kind: 'go'; readonly seat: Seat; readonly line: string }
  /** `shown` is the key of the secret that the owner brought. */
  | { readonly kind: 'change-key'; readonly owner: Owner; readonly shown: string; readonly key: string }
  /** This server watches the room's clock; those in `gone` do no longer. */
  | { readonly kind: 'take-in-hand'; readonly node: string; readonly gone: readonly string[] }
  | { readonly kind: 'act'; readonly owner: Owner; readonly act: TableAct }
  /** The next deal, with a fresh secret seed. */
  | { readonly kind: 'deal'; readonly seed: string }
  /** A teacher's deal, with the bots that fill up the table; refused while a round runs. */
  | { readonly kind: 'deal-prepared'; readonly deal: PreparedDeal; readonly bots: Four<StyleName | null> }
  | { readonly kind: 'lead'; readonly lead: Lead }
  | { readonly kind: 'more-time'; readonly seconds: number }
  /** In round `round` the class has gone on by `line`, all of it so far, and closed the round with it or not (rule L1). */
  | {
      readonly kind: 'follow';
      readonly round: number;
      readonly line: readonly Settled[];
      readonly closed: boolean;
    }
  /** A pupil's seat at a table of a class. */
  | { readonly kind: 'seat-pupil'; readonly seat: Seat; readonly name: string; readonly key: string }
  /** A pupil has given the seat up: a bot takes it over. */
  | { readonly kind: 'free-pupil'; readonly seat: Seat }
  | { readonly kind: 'close' };
