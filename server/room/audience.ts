// What one audience is told of a room: built up for it from the state, never cut down from a whole.
import {
  type Audience,
  type Four,
  forFour,
  type Seat,
  type SeatInfo,
  type Table,
  type View,
  viewFor,
} from '../../shared-engine/index.ts';
import { deadlineOf } from './agenda.ts';
import { isHeld } from './lead.ts';
import { type Chair, goneSince, type PersonChair, type RoomState, wasDealt } from './state.ts';

/** What is the same for every audience and not in the room's state. */
export interface TableFacts {
  readonly code: string;
  readonly card: { readonly id: string; readonly name: string };
  /** When the open step was opened, and the time now, by the clock of this server. */
  readonly stepSince: number;
  readonly now: number;
}

/** The seat somebody listens from, with the person who sits there; null for a watcher. */
export type Listening = { readonly seat: Seat; readonly person: PersonChair } | null;

export function tableFor(state: RoomState, facts: TableFacts, listening: Listening): Table {
  return {
    code: facts.code,
    you: listening?.seat ?? null,
    seats: seatInfos(state),
    terms: state.terms,
    card: facts.card,
    round: state.play?.number ?? 0,
    remaining: remainingOf(state, facts),
    view: roundView(state, listening),
    ...(state.door === 'class' && { led: ledFor(state, listening) }),
  };
}

export function remainingOf(state: RoomState, { stepSince, now }: TableFacts): number | null {
  const held = state.play !== null && isHeld(state.play.round, state.lead);
  // Time stands still at a table that is held.
  const deadline = held ? null : deadlineOf(state, stepSince);
  return deadline === null ? null : Math.max(0, deadline - now);
}

export function ledFor({ play, lead }: RoomState, listening: Listening): NonNullable<Table['led']> {
  return {
    held: play !== null && isHeld(play.round, lead),
    standIn: listening !== null && lead.standIn.includes(listening.seat),
    cardClosed: lead.cardClosed === true,
  };
}

export function seatInfos(state: RoomState): Four<SeatInfo> {
  return forFour((seat) => seatInfo(state.chairs[seat], state.host === seat));
}

/** Who sat down after the deal hears of that round what everybody may hear. */
export function audienceOf(state: RoomState, listening: Listening): Audience {
  const owner = listening !== null && wasDealt(state, listening.person);
  return owner ? { kind: 'seat', seat: listening.seat } : { kind: 'watcher' };
}

export function roundView(state: RoomState, listening: Listening): View | null {
  return state.play && viewFor(state.play.round, audienceOf(state, listening));
}

function seatInfo(chair: Chair, host: boolean): SeatInfo {
  switch (chair.kind) {
    case 'empty':
      return { kind: 'empty' };
    case 'bot':
      return { kind: 'bot', name: chair.name, style: chair.style };
    case 'person': {
      const { name, ready } = chair;
      return { kind: 'person', name, ready, host, present: goneSince(chair) === null };
    }
  }
}
