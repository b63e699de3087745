// What has happened in a room; the log of these is the room.
import type {
  ConnectionOrigin,
  Mode,
  RoundEvent,
  Said,
  Seat,
  StyleName,
  Terms,
} from '../../shared-engine/index.ts';
import type { CardChoice } from '../ports.ts';
import type { TeacherControls } from './teacher-controls.ts';

export type RoomEvent =
  | {
      readonly kind: 'opened';
      readonly mode: Mode;
      readonly terms: Terms;
      readonly card: CardChoice;
      /** Of the class whose table this is; null for a room that people open. */
      readonly classCode: string | null;
    }
  /** `secretHash` is the hash of the seat's secret; the secret itself is stored nowhere. */
  | { readonly kind: 'seat-taken'; readonly seat: Seat; readonly name: string; readonly secretHash: string }
  | { readonly kind: 'seat-vacated'; readonly seat: Seat }
  /** The teacher of the class gave whoever sits there another name. */
  | { readonly kind: 'seat-renamed'; readonly seat: Seat; readonly name: string }
  | {
      readonly kind: 'bot-seated';
      readonly seat: Seat;
      readonly name: string;
      readonly style: StyleName;
    }
  /** The host has made an invitation for a bot to this seat; `secretHash` is of the secret in its link. */
  | { readonly kind: 'bot-invited'; readonly seat: Seat; readonly secretHash: string }
  | { readonly kind: 'invitation-revoked'; readonly seat: Seat }
  /** A bot that runs elsewhere took the seat it was invited to, again where it has never connected. */
  | {
      readonly kind: 'external-bot-seated';
      readonly seat: Seat;
      readonly name: string;
      readonly secretHash: string;
    }
  /** A connection of the seat's holder opened at server `node`; it takes the place of an earlier one. */
  | {
      readonly kind: 'connected';
      readonly seat: Seat;
      readonly node: string;
      readonly connection: string;
      readonly from?: ConnectionOrigin;
    }
  /** This connection of the seat's holder is over. */
  | { readonly kind: 'disconnected'; readonly seat: Seat; readonly connection: string }
  /** A secret was given out to follow the one that was brought; `secretHash` is of the new one, `shown` of that one. */
  | {
      readonly kind: 'secret-issued';
      readonly seat: Seat;
      readonly secretHash: string;
      readonly shown: string;
    }
  /** A connection was opened with this secret for the first time. */
  | { readonly kind: 'secret-confirmed'; readonly seat: Seat; readonly secretHash: string }
  /** Somebody brought a secret that had been replaced before. */
  | { readonly kind: 'old-secret-shown'; readonly seat: Seat; readonly secretHash: string }
  /** Server `node` watches the room's clock from now on, beside `others`; with none the clock runs anew (rule K3). */
  | { readonly kind: 'timer-claimed'; readonly node: string; readonly others: readonly string[] }
  /** The holders of two seats have changed places, before the first deal; bots and invitations too. */
  | { readonly kind: 'seats-swapped'; readonly seat: Seat; readonly other: Seat }
  | ({ readonly kind: 'said' } & Omit<Said, 'nth'>)
  /** The host has changed how the table plays from the next deal on. */
  | { readonly kind: 'terms-changed'; readonly terms: Terms }
  | { readonly kind: 'ready'; readonly seat: Seat; readonly ready: boolean }
  /** The teacher's controls of this table from now on; where that lifts a hold the step gets its whole time. */
  | { readonly kind: 'controls-changed'; readonly controls: TeacherControls }
  /** The open step has so many more seconds. */
  | { readonly kind: 'more-time'; readonly seconds: number }
  /** What happened in the round; `dealt` begins the next one. */
  | { readonly kind: 'round'; readonly event: RoundEvent }
  | { readonly kind: 'closed' };
