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
import type { Recorded } from '../aggregate/recorded.ts';
import type { RoomEvent } from './event.ts';
import type { PersonSeat, Play, Presence, RoomState, SeatState } from './state.ts';
import { isHeld, NO_CONTROLS } from './teacher-controls.ts';

/** Secrets of one seat that are good at the same time. */
const MAX_SECRETS = 6;

/** The room right after its first event; null where that is not its opening. */
export function beginRoom({ seq, at, event }: Recorded<RoomEvent>): RoomState | null {
  if (event.kind !== 'opened') return null;
  const { mode, terms, card, classCode } = event;
  const seats: Four<SeatState> = forFour(() => ({ kind: 'empty' }));
  const nobody = { host: null, play: null, timerOwners: [], closed: false };
  return { seq, at, mode, terms, card, classCode, seats, controls: NO_CONTROLS, ...nobody };
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
      return { ...state, seats, host: state.host ?? seat };
    }
    case 'seat-vacated': {
      const seats = withSeat<SeatState>(state.seats, event.seat, { kind: 'empty' });
      return {
        ...state,
        seats,
        host: state.host === event.seat ? nextHost(seats, event.seat) : state.host,
      };
    }
    case 'bot-seated': {
      const { seat, name, style } = event;
      return { ...state, seats: withSeat<SeatState>(state.seats, seat, { kind: 'bot', name, style }) };
    }
    case 'ready':
      return withPerson(state, event.seat, { ready: event.ready });
    case 'connected':
      return withPerson(state, event.seat, { presence: connectedBy(event) });
    case 'disconnected':
      return withPerson(state, event.seat, { presence: { kind: 'disconnected', since: recorded.at } });
    case 'secret-changed':
      return withNewSecret(state, event);
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
  return { kind: 'person', name, secretHashes: [secretHash], since: seq, ready: false, presence };
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

/** Each return brings a new secret; those not brought for some returns are worth nothing any more. */
function withNewSecret(
  state: RoomState,
  { seat, secretHash, before }: RoomEvent & { kind: 'secret-changed' },
): RoomState {
  const held = state.seats[seat];
  if (held.kind !== 'person') return state;
  const others = held.secretHashes.filter((other) => other !== before);
  return withPerson(state, seat, { secretHashes: [...others, before, secretHash].slice(-MAX_SECRETS) });
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
  return seat.kind === 'person' ? { ...seat, ready: false } : seat;
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
