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
import { FILL_IN_STYLE } from '../room/bot-name.ts';
import type { TablePolicy } from '../room/policy.ts';
import {
  deadlineOf,
  disconnectedSince,
  type HeldSeat,
  nameAt,
  type RoomState,
  wasDealt,
} from '../room/state.ts';
import { isHeld } from '../room/teacher-controls.ts';

/** What is the same for every audience and not in the room's state. */
export interface TableFacts {
  readonly code: string;
  readonly policy: TablePolicy;
  readonly card: { readonly id: string; readonly name: string };
  /** How long somebody may be away before a bot chooses; null where none does. */
  readonly absentMs: number | null;
  /** When the open step was opened, and the time now, by the clock of this server. */
  readonly stepSince: number;
  readonly now: number;
}

/** The seat somebody listens from, with whoever holds it; null for a spectator. */
export type Listening = { readonly seat: Seat; readonly held: HeldSeat } | null;

export function tableFor(state: RoomState, facts: TableFacts, listening: Listening): Table {
  return {
    code: facts.code,
    you: listening?.seat ?? null,
    seats: seatInfos(state, facts.absentMs),
    mode: state.mode,
    terms: state.terms,
    card: facts.card,
    round: state.play?.number ?? 0,
    remaining: remainingOf(state, facts),
    view: roundView(state, listening),
    ...(state.said.length > 0 && { said: state.said }),
    ...(facts.policy.hasTeacher && { controls: controlsFor(state, listening) }),
  };
}

export function remainingOf(state: RoomState, { stepSince, now }: TableFacts): number | null {
  const held = state.play !== null && isHeld(state.play.round, state.controls);
  // Time stands still at a table that is held.
  const deadline = held ? null : deadlineOf(state, stepSince);
  return deadline === null ? null : Math.max(0, deadline - now);
}

export function controlsFor(
  { play, controls }: RoomState,
  listening: Listening,
): NonNullable<Table['controls']> {
  return {
    held: play !== null && isHeld(play.round, controls),
    standIn: listening !== null && controls.standIn.includes(listening.seat),
    cardClosed: controls.cardClosed === true,
    ...(controls.coach && { coach: true }),
    ...(controls.classOver && { classOver: true }),
    ...(controls.amongFriends && { amongFriends: true }),
  };
}

/** `absentMs` null where no bot chooses for somebody who is away. */
export function seatInfos(state: RoomState, absentMs: number | null): Four<SeatInfo> {
  return forFour((seat) => seatInfo(state, seat, absentMs));
}

/** Who sat down after the deal is told of that round what everybody may know. */
export function audienceOf(state: RoomState, listening: Listening): Audience {
  const isPlayer = listening !== null && wasDealt(state, listening.held);
  return isPlayer ? { kind: 'seat', seat: listening.seat } : { kind: 'spectator' };
}

export function roundView(state: RoomState, listening: Listening): View | null {
  return state.play && viewFor(state.play.round, audienceOf(state, listening));
}

function seatInfo(state: RoomState, seat: Seat, absentMs: number | null): SeatInfo {
  const held = state.seats[seat];
  const invited = state.invitations[seat] === null ? {} : { invited: true as const };
  switch (held.kind) {
    case 'empty':
      return { kind: 'empty', ...invited };
    case 'bot':
      return { kind: 'bot', name: held.name, style: held.style, ...invited };
    case 'external-bot': {
      // It is the host's own: it goes when the host does (rule BT6).
      const by = (state.host !== null && nameAt(state, state.host)) || held.name;
      const external = { by, present: disconnectedSince(held) === null };
      return { kind: 'bot', name: held.name, style: FILL_IN_STYLE, external };
    }
    case 'person': {
      const { name, ready } = held;
      const since = disconnectedSince(held);
      return {
        kind: 'person',
        name,
        ready,
        host: state.host === seat,
        present: since === null,
        ...(since !== null && absentMs !== null && { botFrom: since + absentMs }),
      };
    }
  }
}
