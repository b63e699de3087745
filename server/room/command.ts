// What may be asked of a room, by a person, by a class or by the server itself.
import type {
  Actor,
  Choice,
  ConnectionOrigin,
  DealScript,
  Four,
  Mode,
  OpenRoom,
  PreparedDeal,
  Resolved,
  Seat,
  StyleName,
  TableAction,
  Terms,
} from '../../shared-engine/index.ts';
import type { CardChoice } from '../ports.ts';
import type { TeacherControls } from './teacher-controls.ts';

export interface Opening {
  readonly mode: Mode;
  readonly terms: Terms;
  readonly card: CardChoice;
  /** Of the class whose table this is; null for a room that people open. */
  readonly classCode: string | null;
  /** Who sits on seat 0, by a checked name, and the bots on the other seats; null where everybody comes later. */
  readonly host: {
    readonly name: string;
    readonly secretHash: string;
    readonly bots: OpenRoom['bots'];
  } | null;
}

/**
 * A person or an external bot; `since` is the number of the event with which the holder sat down, which alone tells who it
 * is. The seat is the one held when this was made out: people may change places before the first deal.
 */
export interface SeatHolder {
  readonly seat: Seat;
  readonly since: number;
}

/** The connection that a command came over. */
export interface CameOver {
  /** Names it, among all servers. */
  readonly name: string;
  readonly from: ConnectionOrigin | null;
  /** Whether the room has known of it. */
  readonly known: boolean;
}

export type RoomCommand =
  /** `seat` null for any free one. */
  | {
      readonly kind: 'take-seat';
      readonly seat: Seat | null;
      readonly name: string;
      readonly secretHash: string;
    }
  /** The host keeps a seat open for a bot that brings the secret of this hash. */
  | {
      readonly kind: 'invite-bot';
      readonly holder: SeatHolder;
      readonly seat: Seat;
      readonly secretHash: string;
    }
  /** A bot takes the seat it was invited to with the secret of hash `shown`; `secretHash` is of the seat's own. */
  | {
      readonly kind: 'seat-external-bot';
      readonly name: string;
      readonly shown: string;
      readonly secretHash: string;
    }
  /** A person's choice; `seat` is what the frame says, which must be the holder's. */
  | {
      readonly kind: 'choose';
      readonly holder: SeatHolder;
      readonly over?: CameOver;
      readonly round: number;
      readonly seat: Seat;
      readonly choice: Choice;
    }
  /** The server's choice for a seat: its bot's, or a stand-in's (rule K2). */
  | {
      readonly kind: 'choose-for';
      readonly seat: Seat;
      readonly by: Exclude<Actor, 'player'>;
      readonly round: number;
      readonly choice: Choice;
    }
  /** A connection of the holder's opened at server `node`. */
  | {
      readonly kind: 'connect';
      readonly holder: SeatHolder;
      readonly node: string;
      readonly connection: string;
      readonly from?: ConnectionOrigin;
    }
  | { readonly kind: 'disconnect'; readonly seat: Seat; readonly connection: string }
  /** `shown` is the hash of the secret that was brought, `secretHash` of the one that is to follow it. */
  | {
      readonly kind: 'issue-secret';
      readonly holder: SeatHolder;
      readonly shown: string;
      readonly secretHash: string;
    }
  /** A connection opens with the secret of hash `shown`. */
  | { readonly kind: 'confirm-secret'; readonly holder: SeatHolder; readonly shown: string }
  /** Somebody has brought a secret that was replaced long ago. */
  | { readonly kind: 'report-old-secret'; readonly holder: SeatHolder; readonly shown: string }
  /** Server `node` watches the room's clock; the servers in `gone` no longer run. */
  | { readonly kind: 'claim-timer'; readonly node: string; readonly gone: readonly string[] }
  /** `over` is absent where it came over no connection that stays open. */
  | {
      readonly kind: 'action';
      readonly holder: SeatHolder;
      readonly over?: CameOver;
      readonly action: TableAction;
    }
  /** The next deal of the room with this code, with a fresh secret seed. */
  | { readonly kind: 'deal'; readonly code: string; readonly seed: string }
  /** A teacher's deal, with the bots that fill up the table; rejected while a round runs. */
  | {
      readonly kind: 'deal-prepared';
      readonly deal: PreparedDeal;
      readonly bots: Four<StyleName | null>;
      /** Of these bots (rule R6); empty where they choose by themselves. */
      readonly script: DealScript;
    }
  | ClassCommandToRoom
  | { readonly kind: 'close' };

/** What a class asks of one of its tables. */
export type ClassCommandToRoom =
  | { readonly kind: 'set-controls'; readonly controls: TeacherControls }
  /** `before` is what had been given for the open step when the teacher looked; missing where that is not known. */
  | { readonly kind: 'more-time'; readonly seconds: number; readonly before?: number | undefined }
  /** In round `round` the class has come to `outcomes`, all of them so far, and has closed the round or not (rule L1). */
  | {
      readonly kind: 'advance';
      readonly round: number;
      readonly outcomes: readonly Resolved[];
      readonly closed: boolean;
    }
  /** A player's seat at a table of a class. */
  | {
      readonly kind: 'seat-player';
      readonly seat: Seat;
      readonly name: string;
      readonly secretHash: string;
    }
  | { readonly kind: 'rename-seat'; readonly seat: Seat; readonly name: string }
  /** A player has given the seat up: a bot takes it over. */
  | { readonly kind: 'vacate-seat'; readonly seat: Seat };
