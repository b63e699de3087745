// The state of a room, as its log tells it.
import {
  type ConnectionOrigin,
  type Four,
  type Mode,
  type Round,
  type RoundEvent,
  type Said,
  SEATS,
  type Seat,
  type StyleName,
  type Terms,
} from '../../shared-engine/index.ts';
import type { Used } from '../aggregate/allowance.ts';
import type { CardChoice } from '../ports.ts';
import type { SeatHolder } from './command.ts';
import type { SeatSecrets } from './seat-secrets.ts';
import type { TeacherControls } from './teacher-controls.ts';

export type Presence =
  /** `connection` names the newest one, so that the late end of an older one does no harm. */
  | {
      readonly kind: 'connected';
      readonly node: string;
      readonly connection: string;
      readonly from?: ConnectionOrigin;
    }
  /** `since` in milliseconds since 1970; `last` is the connection that ended then, null where there was none yet. */
  | { readonly kind: 'disconnected'; readonly since: number; readonly last: LastConnection | null };

export interface LastConnection {
  readonly connection: string;
  readonly from?: ConnectionOrigin;
}

/** What is known of whoever holds a seat by a secret, from wherever they connect. */
interface Holding {
  readonly name: string;
  readonly secrets: SeatSecrets;
  /** Whether somebody has brought a replaced secret of this seat and the holder has not been told yet. */
  readonly warn: boolean;
  /** Number of the event with which this holder sat down: tells one holder of the seat from the next. */
  readonly since: number;
  /** Who has never connected is disconnected since sitting down. */
  readonly presence: Presence;
}

export interface PersonSeat extends Holding {
  readonly kind: 'person';
  readonly ready: boolean;
  /** How often this person has taken readiness back since the last deal. */
  readonly unready: number;
}
/** A bot that runs elsewhere and belongs to the host, who invited it. */
export interface ExternalBotSeat extends Holding {
  readonly kind: 'external-bot';
}
export type HeldSeat = PersonSeat | ExternalBotSeat;

export type SeatState =
  | { readonly kind: 'empty' }
  | { readonly kind: 'bot'; readonly name: string; readonly style: StyleName }
  | HeldSeat;

/** The current or last round. */
export interface Play {
  /** 1 for the first. */
  readonly number: number;
  /** Number of the event that dealt it, and that event. */
  readonly dealtSeq: number;
  readonly dealt: RoundEvent & { readonly kind: 'dealt' };
  /** When the open step was opened; deadlines count from here. */
  readonly stepAt: number;
  readonly round: Round;
  /** How often each seat has withdrawn its pass in the open step: tells one question to a seat from the next. */
  readonly withdrawals: Four<number>;
  /** Seconds given on top of the deadline of the open step. */
  readonly moreTime: number;
}

export interface RoomState {
  /** Number of the last event. */
  readonly seq: number;
  /** When the last event happened. */
  readonly at: number;
  readonly mode: Mode;
  readonly terms: Terms;
  readonly card: CardChoice;
  readonly classCode: string | null;
  readonly seats: Four<SeatState>;
  /** Who may seat bots and remove people; null while nobody sits. */
  readonly host: Seat | null;
  /**
   * For each seat the hash of the secret that seats an external bot there; null where none is invited. It stays until the
   * bot has connected, so that a claim whose answer was lost can be made again.
   */
  readonly invitations: Four<string | null>;
  readonly play: Play | null;
  readonly controls: TeacherControls;
  /** The servers that watch the room's clock, as far as it has one. */
  readonly timerOwners: readonly string[];
  /** By seat, whoever sat there: of how often it may be come back to. */
  readonly returns: Four<Used>;
  /** By seat: of how often somebody may sit down there. */
  readonly sittings: Four<Used>;
  /** By seat: of how often whoever sits there may change places. */
  readonly moves: Four<Used>;
  /** Of how often the host may change bots and invitations. */
  readonly changes: Used;
  /** The last words of each seat, the latest last, until the next step is over. */
  readonly said: readonly Said[];
  /** By seat, of how often something may be said there. */
  readonly phrases: Four<Used>;
  readonly closed: boolean;
}

/** Whether a round is dealt and not closed yet. */
export function isRoundRunning(state: RoomState): boolean {
  return state.play !== null && state.play.round.phase !== 'closed';
}

/**
 * Whether this holder was dealt the current or last round. Who sat down later must not see the tiles that a
 * bot or an earlier holder held (rule V1).
 */
export function wasDealt(state: RoomState, held: HeldSeat): boolean {
  return state.play !== null && held.since < state.play.dealtSeq;
}

/** Whoever holds the seat by a secret; null where nobody does. */
export function heldAt({ seats }: RoomState, seat: Seat): HeldSeat | null {
  const held = seats[seat];
  return held.kind === 'person' || held.kind === 'external-bot' ? held : null;
}

/** Everybody who sits, from seat 0 on. */
export function personsOf({ seats }: RoomState): PersonSeat[] {
  return seats.flatMap((seat) => (seat.kind === 'person' ? [seat] : []));
}

/** The name of the person or the bot on this seat; null where nobody sits. */
export function nameAt({ seats }: RoomState, seat: Seat): string | null {
  const held = seats[seat];
  return held.kind === 'empty' ? null : held.name;
}

/** The names of people and bots. */
export function namesAt(state: RoomState): string[] {
  return SEATS.flatMap((seat) => nameAt(state, seat) ?? []);
}

/** Where the holder sits who sat down with event `since`, whoever has changed places meanwhile; null where nobody. */
export function seatOf(state: RoomState, { since }: Pick<SeatHolder, 'since'>): Seat | null {
  return SEATS.find((seat) => heldAt(state, seat)?.since === since) ?? null;
}

export function holderAt(state: RoomState, holder: Pick<SeatHolder, 'since'>): HeldSeat | null {
  const seat = seatOf(state, holder);
  return seat === null ? null : heldAt(state, seat);
}

export function isHeldBy(state: RoomState, holder: SeatHolder): boolean {
  return holderAt(state, holder) !== null;
}

/** The seat whose secret in use has this hash; null where none has. */
export function seatWithSecret(state: RoomState, secretHash: string): Seat | null {
  return SEATS.find((seat) => heldAt(state, seat)?.secrets.current === secretHash) ?? null;
}

/** The newest connection that the room knows of, whether it is still open or not. */
export function newestConnection({ presence }: HeldSeat): LastConnection | null {
  return presence.kind === 'connected' ? presence : presence.last;
}

/** Since when this holder is disconnected, or null while connected. */
export function disconnectedSince({ presence }: HeldSeat): number | null {
  return presence.kind === 'disconnected' ? presence.since : null;
}

/** When the open step ends by the clock, in milliseconds since 1970 (rule K1); null where there is no deadline. */
export function deadlineOf({ terms, play }: RoomState, stepSince: number): number | null {
  if (terms.deadline === null || play === null || play.round.phase === 'closed') return null;
  return stepSince + (terms.deadline + play.moreTime) * 1000;
}
