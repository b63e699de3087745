// The state of a room, as its log tells it.
import type { Four, PageLine, RoomTerms, Round, Seat, StyleName } from '../../shared-engine/index.ts';
import type { CardChoice } from './card-choice.ts';
import type { Door } from './event.ts';
import type { Lead } from './lead.ts';

export type Presence =
  /** `line` names the newest connection, so that the late end of an old one does no harm. */
  | { readonly kind: 'here'; readonly node: string; readonly line: string; readonly from?: PageLine }
  /** Milliseconds since 1970. */
  | { readonly kind: 'gone'; readonly since: number };

export interface PersonChair {
  readonly kind: 'person';
  readonly name: string;
  /**
   * Hashes of the secrets that are good, the one used or given out last at the end. Several, because answers get lost
   * and requests overtake one another, and neither may lock the owner out.
   */
  readonly keys: readonly string[];
  /** Number of the event with which this person sat down: tells one owner of the seat from the next. */
  readonly since: number;
  readonly ready: boolean;
  /** Whether the owner is here, and since when not; who has never come is gone since sitting down. */
  readonly presence: Presence;
}
export type Chair =
  | { readonly kind: 'empty' }
  | { readonly kind: 'bot'; readonly name: string; readonly style: StyleName }
  | PersonChair;

/** The current or last round. */
export interface Play {
  /** 1 for the first. */
  readonly number: number;
  /** Number of the event that dealt it. */
  readonly dealtSeq: number;
  /** When the open step was opened; deadlines count from here. */
  readonly stepAt: number;
  readonly round: Round;
  /** How often each seat has taken back in the open step: tells one question to a seat from the next. */
  readonly takenBack: Four<number>;
  /** Seconds given on top of the deadline of the open step. */
  readonly moreTime: number;
}

export interface RoomState {
  /** Number of the last event. */
  readonly seq: number;
  /** When the last event happened. */
  readonly at: number;
  readonly door: Door;
  readonly terms: RoomTerms;
  readonly card: CardChoice;
  readonly chairs: Four<Chair>;
  /** Who may seat bots and free seats; null while nobody sits. */
  readonly host: Seat | null;
  readonly play: Play | null;
  readonly lead: Lead;
  /** The servers that watch the room's clock, as far as it has one. */
  readonly inHandOf: readonly string[];
  readonly closed: boolean;
}

/** Whether a deal is on the table that is not closed yet. */
export function roundRuns(state: RoomState): boolean {
  return state.play !== null && state.play.round.phase !== 'closed';
}

/**
 * Whether this person was dealt the current or last round. Who sat down later must not see the tiles that a
 * bot or an earlier owner held (rule V1).
 */
export function wasDealt(state: RoomState, person: PersonChair): boolean {
  return state.play !== null && person.since < state.play.dealtSeq;
}

/** Everybody who sits, from seat 0 on. */
export function personsOf({ chairs }: RoomState): PersonChair[] {
  return chairs.flatMap((chair) => (chair.kind === 'person' ? [chair] : []));
}

/** The person on this seat, if it is still the one who sat down with event `since`. */
export function personAt(state: RoomState, seat: Seat, since: number): PersonChair | null {
  const chair = state.chairs[seat];
  return chair.kind === 'person' && chair.since === since ? chair : null;
}

/** Since when this person is gone, or null while connected. */
export function goneSince({ presence }: PersonChair): number | null {
  return presence.kind === 'gone' ? presence.since : null;
}
