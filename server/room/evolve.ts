// (room, event) → the next room; total and silent, it believes every event of the log.
import {
  begin,
  evolve,
  type Four,
  forFour,
  neighbor,
  type RoundEvent,
  type Seat,
  withSeat,
} from '../../shared-engine/index.ts';
import { UNUSED, usedLess, usedOnceMore } from '../aggregate/allowance.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import type { RoomEvent } from './event.ts';
import { CHANGES, FIRST_RETURNS, RETURNS } from './growth.ts';
import { firstSecret, withConfirmed, withShown, withSuccessor } from './seat-secrets.ts';
import type { PersonSeat, Play, Presence, RoomState, SeatState } from './state.ts';
import { isHeld, NO_CONTROLS } from './teacher-controls.ts';

/** The room right after its first event; null where that is not its opening. */
export function beginRoom({ seq, at, event }: Recorded<RoomEvent>): RoomState | null {
  if (event.kind !== 'opened') return null;
  const { mode, terms, card, classCode } = event;
  const seats: Four<SeatState> = forFour(() => ({ kind: 'empty' }));
  const nobody = { host: null, play: null, timerOwners: [], closed: false };
  const unused = { returns: forFour(() => UNUSED), changes: UNUSED };
  return { seq, at, mode, terms, card, classCode, seats, controls: NO_CONTROLS, ...nobody, ...unused };
}

export function evolveRoom(before: RoomState, recorded: Recorded<RoomEvent>): RoomState {
  const state: RoomState = { ...before, seq: recorded.seq, at: recorded.at };
  const { event } = recorded;
  switch (event.kind) {
    case 'opened':
      return state;
    case 'seat-taken': {
      const { seat } = event;
      const seats = withSeat<SeatState>(state.seats, seat, newPerson(event, recorded));
      const returns = withSeat(state.returns, seat, usedLess(state.returns[seat], RETURNS, FIRST_RETURNS));
      return { ...state, ...changed(state, recorded.at), returns, seats, host: state.host ?? seat };
    }
    case 'seat-vacated': {
      const seats = withSeat<SeatState>(state.seats, event.seat, { kind: 'empty' });
      return {
        ...state,
        ...changed(state, recorded.at),
        seats,
        host: state.host === event.seat ? nextHost(seats, event.seat) : state.host,
      };
    }
    case 'bot-seated': {
      const { seat, name, style } = event;
      const seats = withSeat<SeatState>(state.seats, seat, { kind: 'bot', name, style });
      return { ...state, ...changed(state, recorded.at), seats };
    }
    case 'ready':
      return withReadiness(state, event);
    case 'connected':
      // Who connects is told of what happened meanwhile.
      return withPerson(state, event.seat, { presence: connectedBy(event), warn: false });
    case 'disconnected':
      return withPerson(state, event.seat, { presence: { kind: 'disconnected', since: recorded.at } });
    case 'secret-issued':
    case 'secret-confirmed':
    case 'old-secret-shown':
      return withSecret(state, event, recorded.at);
    case 'timer-claimed':
      return {
        ...state,
        timerOwners: [...event.others, event.node],
        play: timed(state, recorded.at, event),
      };
    case 'controls-changed':
      return { ...state, controls: event.controls, play: released(state, recorded.at, event) };
    case 'more-time':
      return {
        ...state,
        play: state.play && { ...state.play, moreTime: state.play.moreTime + event.seconds },
      };
    case 'round':
      return { ...state, ...played(state, recorded, event.event) };
    case 'closed':
      return { ...state, closed: true };
  }
}

function newPerson(
  { name, secretHash }: RoomEvent & { kind: 'seat-taken' },
  { seq, at }: Recorded<RoomEvent>,
): PersonSeat {
  const presence: Presence = { kind: 'disconnected', since: at };
  const secrets = firstSecret(secretHash);
  return { kind: 'person', name, secrets, warn: false, since: seq, ready: false, unready: 0, presence };
}

function played(
  state: RoomState,
  { seq, at }: Recorded<RoomEvent>,
  event: RoundEvent,
): Pick<RoomState, 'play' | 'seats'> {
  const { play, seats } = state;
  if (event.kind === 'dealt') {
    const number = (play?.number ?? 0) + 1;
    const step = { stepAt: at, withdrawals: [0, 0, 0, 0], moreTime: 0 } as const;
    return {
      play: { number, dealtSeq: seq, dealt: event, round: begin(event), ...step },
      seats: forFour((seat) => unready(seats[seat])),
    };
  }
  if (play === null) return { play, seats };
  return { play: { ...play, ...stepAfter(play, at, event), round: evolve(play.round, event) }, seats };
}

function stepAfter(
  { stepAt, withdrawals, moreTime }: Play,
  at: number,
  event: RoundEvent,
): Pick<Play, 'stepAt' | 'withdrawals' | 'moreTime'> {
  switch (event.kind) {
    case 'resolved':
    case 'advanced':
      return { stepAt: at, withdrawals: [0, 0, 0, 0], moreTime: 0 };
    case 'withdrawn': {
      const { seat } = event;
      return { stepAt, withdrawals: withSeat(withdrawals, seat, withdrawals[seat] + 1), moreTime };
    }
    default:
      return { stepAt, withdrawals, moreTime };
  }
}

function connectedBy({ node, connection, from }: RoomEvent & { kind: 'connected' }): Presence {
  return { kind: 'connected', node, connection, ...(from && { from }) };
}

function withSecret(
  state: RoomState,
  event: RoomEvent & { kind: 'secret-issued' | 'secret-confirmed' | 'old-secret-shown' },
  at: number,
): RoomState {
  const { seat, secretHash } = event;
  const held = state.seats[seat];
  if (held.kind !== 'person') return state;
  const { secrets, presence } = held;
  switch (event.kind) {
    case 'secret-issued': {
      const successor = { hash: secretHash, parent: event.shown };
      const returns = withSeat(state.returns, seat, usedOnceMore(state.returns[seat], RETURNS, at));
      return withPerson({ ...state, returns }, seat, { secrets: withSuccessor(secrets, successor, at) });
    }
    case 'secret-confirmed':
      return withPerson(state, seat, { secrets: withConfirmed(secrets, secretHash, at) });
    case 'old-secret-shown': {
      const warn = presence.kind === 'disconnected';
      return withPerson(state, seat, { secrets: withShown(secrets, secretHash), warn });
    }
  }
}

function withReadiness(state: RoomState, { seat, ready }: RoomEvent & { kind: 'ready' }): RoomState {
  const held = state.seats[seat];
  const before = held.kind === 'person' ? held.unready : 0;
  return withPerson(state, seat, { ready, unready: before + (ready ? 0 : 1) });
}

/** Somebody or a bot has sat down or gone. */
function changed({ changes }: RoomState, at: number): Pick<RoomState, 'changes'> {
  return { changes: usedOnceMore(changes, CHANGES, at) };
}

function withPerson(state: RoomState, seat: Seat, change: Partial<PersonSeat>): RoomState {
  const held = state.seats[seat];
  if (held.kind !== 'person') return state;
  return { ...state, seats: withSeat<SeatState>(state.seats, seat, { ...held, ...change }) };
}

/** The step gets its whole time where no server watched the clock before (rule K3). */
function timed(
  { play }: RoomState,
  at: number,
  { others }: RoomEvent & { kind: 'timer-claimed' },
): Play | null {
  return play && others.length === 0 ? { ...play, stepAt: at } : play;
}

/** Time during which a table was held does not count. */
function released(
  { play, controls }: RoomState,
  at: number,
  event: RoomEvent & { kind: 'controls-changed' },
): Play | null {
  const lifted = play !== null && isHeld(play.round, controls) && !isHeld(play.round, event.controls);
  return lifted ? { ...play, stepAt: at } : play;
}

function unready(seat: SeatState): SeatState {
  return seat.kind === 'person' ? { ...seat, ready: false, unready: 0 } : seat;
}

/** The next person to the right of the host who left. */
function nextHost(seats: Four<SeatState>, from: Seat): Seat | null {
  let seat = neighbor(from, 'right');
  while (seat !== from) {
    if (seats[seat].kind === 'person') return seat;
    seat = neighbor(seat, 'right');
  }
  return null;
}
