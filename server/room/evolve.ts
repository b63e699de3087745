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
import { CHANGES, FIRST_CHANGES, FIRST_RETURNS, RETURNS, SITTINGS } from './growth.ts';
import { connectedBy, endedAt } from './presence.ts';
import { firstSecret, withConfirmed, withShown, withSuccessor } from './seat-secrets.ts';
import {
  type ExternalBotSeat,
  type HeldSeat,
  heldAt,
  isRoundRunning,
  type PersonSeat,
  type Play,
  type Presence,
  type RoomState,
  type SeatState,
} from './state.ts';
import { saidAfter, swapped, withoutWordsOf, withWords } from './table-talk.ts';
import { isHeld, NO_CONTROLS } from './teacher-controls.ts';

/** The room right after its first event; null where that is not its opening. */
export function beginRoom({ seq, at, event }: Recorded<RoomEvent>): RoomState | null {
  if (event.kind !== 'opened') return null;
  const { mode, terms, card, classCode } = event;
  const seats: Four<SeatState> = forFour(() => ({ kind: 'empty' }));
  const invitations = forFour(() => null);
  const nobody = { host: null, invitations, play: null, timerOwners: [], closed: false };
  const unused = {
    returns: forFour(() => UNUSED),
    sittings: forFour(() => UNUSED),
    moves: forFour(() => UNUSED),
    changes: UNUSED,
    phrases: forFour(() => UNUSED),
    said: [],
  };
  return { seq, at, mode, terms, card, classCode, seats, controls: NO_CONTROLS, ...nobody, ...unused };
}

export function evolveRoom(before: RoomState, recorded: Recorded<RoomEvent>): RoomState {
  const { seq, at, event } = recorded;
  // Most events are of a round: one new state for each of them, not two.
  if (event.kind === 'round') return played(before, recorded, event.event);
  const state: RoomState = { ...before, seq, at };
  switch (event.kind) {
    case 'opened':
      return state;
    case 'seat-taken': {
      const { seat } = event;
      const seats = withSeat<SeatState>(state.seats, seat, newPerson(event, recorded));
      return {
        ...satDown(state, event, recorded.at),
        seats,
        host: state.host ?? seat,
        invitations: withoutInvitation(state, seat),
      };
    }
    case 'external-bot-seated': {
      const { seat } = event;
      const seats = withSeat<SeatState>(state.seats, seat, newExternalBot(event, recorded));
      return { ...satDown(state, event, recorded.at), seats };
    }
    case 'seat-vacated': {
      const seats = withSeat<SeatState>(state.seats, event.seat, { kind: 'empty' });
      // A bot that never connected leaves its invitation behind, which must not seat it again.
      const isBots = state.seats[event.seat].kind === 'external-bot';
      const left = isBots ? withoutInvitation(state, event.seat) : state.invitations;
      // A bot of the server is removed by the host; whoever holds a seat may always go.
      const isChange = state.seats[event.seat].kind === 'bot';
      const gone = withoutWordsOf(state, event.seat);
      const vacated = { ...(isChange ? changed(gone, recorded.at) : gone), seats, invitations: left };
      if (state.host !== event.seat) return vacated;
      const changes = usedLess(state.changes, CHANGES, FIRST_CHANGES);
      // The host's invitations go with the host.
      return { ...vacated, invitations: forFour(() => null), changes, host: nextHost(seats, event.seat) };
    }
    case 'seat-renamed': {
      const held = state.seats[event.seat];
      if (held.kind !== 'person') return state;
      const seats = withSeat<SeatState>(state.seats, event.seat, { ...held, name: event.name });
      return { ...state, seats };
    }
    case 'bot-invited': {
      const { seat, secretHash } = event;
      const invitations = withSeat<string | null>(state.invitations, seat, secretHash);
      return { ...changed(state, recorded.at), invitations };
    }
    case 'invitation-revoked':
      return { ...state, invitations: withoutInvitation(state, event.seat) };
    case 'bot-seated': {
      const { seat, name, style } = event;
      const seats = withSeat<SeatState>(state.seats, seat, { kind: 'bot', name, style });
      const silent = withoutWordsOf(state, seat);
      // While a round runs it takes over for somebody who left, and that is no doing of the host's.
      return { ...(isRoundRunning(state) ? silent : changed(silent, recorded.at)), seats };
    }
    case 'seats-swapped':
      return swapped(state, event, recorded.at);
    case 'said':
      return withWords(state, event, recorded.at);
    case 'terms-changed': {
      // Nobody has agreed to this yet.
      const seats = forFour((seat) => unready(state.seats[seat]));
      return { ...state, ...changed(state, recorded.at), terms: event.terms, seats };
    }
    case 'ready':
      return withReadiness(state, event);
    case 'connected': {
      // A bot that connects has heard the answer to its claim. Who connects is told of what happened meanwhile.
      const { seat } = event;
      const invitations = withoutInvitation(state, seat);
      return withHeld({ ...state, invitations }, seat, { presence: connectedBy(event), warn: false });
    }
    case 'disconnected':
      return withHeld(state, event.seat, { presence: endedAt(heldAt(state, event.seat), recorded.at) });
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
    case 'closed':
      return { ...state, closed: true };
  }
}

function newPerson(event: RoomEvent & { kind: 'seat-taken' }, recorded: Recorded<RoomEvent>): PersonSeat {
  return { kind: 'person', ...newHolding(event, recorded), ready: false, unready: 0 };
}

function newExternalBot(
  event: RoomEvent & { kind: 'external-bot-seated' },
  recorded: Recorded<RoomEvent>,
): ExternalBotSeat {
  return { kind: 'external-bot', ...newHolding(event, recorded) };
}

function newHolding(
  { name, secretHash }: { readonly name: string; readonly secretHash: string },
  { seq, at }: Recorded<RoomEvent>,
): Omit<ExternalBotSeat, 'kind'> {
  const presence: Presence = { kind: 'disconnected', since: at, last: null };
  return { name, secrets: firstSecret(secretHash), warn: false, since: seq, presence };
}

function withoutInvitation({ invitations }: RoomState, seat: Seat): RoomState['invitations'] {
  return invitations[seat] === null ? invitations : withSeat<string | null>(invitations, seat, null);
}

function played(before: RoomState, { seq, at }: Recorded<RoomEvent>, event: RoundEvent): RoomState {
  const { play, seats } = before;
  const said = saidAfter(before, event);
  if (event.kind === 'dealt') {
    const number = (play?.number ?? 0) + 1;
    const step = { stepAt: at, withdrawals: [0, 0, 0, 0], moreTime: 0 } as const;
    return {
      ...before,
      seq,
      at,
      play: { number, dealtSeq: seq, dealt: event, round: begin(event), ...step },
      seats: forFour((seat) => unready(seats[seat])),
      said,
    };
  }
  return { ...before, seq, at, play: play && playAfter(play, at, event), said };
}

function playAfter(play: Play, at: number, event: RoundEvent): Play {
  const { number, dealtSeq, dealt } = play;
  const round = evolve(play.round, event);
  const { stepAt, withdrawals, moreTime } = stepAfter(play, at, event);
  return { number, dealtSeq, dealt, round, stepAt, withdrawals, moreTime };
}

function stepAfter(
  play: Play,
  at: number,
  event: RoundEvent,
): Pick<Play, 'stepAt' | 'withdrawals' | 'moreTime'> {
  switch (event.kind) {
    case 'resolved':
    case 'advanced':
      return { stepAt: at, withdrawals: [0, 0, 0, 0], moreTime: 0 };
    case 'withdrawn': {
      const { seat } = event;
      const { stepAt, withdrawals, moreTime } = play;
      return { stepAt, withdrawals: withSeat(withdrawals, seat, withdrawals[seat] + 1), moreTime };
    }
    default:
      return play;
  }
}

function withSecret(
  state: RoomState,
  event: RoomEvent & { kind: 'secret-issued' | 'secret-confirmed' | 'old-secret-shown' },
  at: number,
): RoomState {
  const { seat, secretHash } = event;
  const held = heldAt(state, seat);
  if (held === null) return state;
  const { secrets, presence } = held;
  switch (event.kind) {
    case 'secret-issued': {
      const successor = { hash: secretHash, parent: event.shown };
      const returns = withSeat(state.returns, seat, usedOnceMore(state.returns[seat], RETURNS, at));
      return withHeld({ ...state, returns }, seat, { secrets: withSuccessor(secrets, successor, at) });
    }
    case 'secret-confirmed':
      return withHeld(state, seat, { secrets: withConfirmed(secrets, secretHash, at) });
    case 'old-secret-shown': {
      const warn = presence.kind === 'disconnected';
      return withHeld(state, seat, { secrets: withShown(secrets, secretHash), warn });
    }
  }
}

/** The host has seated or removed a bot of the server, or made an invitation. */
function changed(state: RoomState, at: number): RoomState {
  return { ...state, changes: usedOnceMore(state.changes, CHANGES, at) };
}

/** Whoever sits down may return a few times, however often the seat was come back to before. */
function satDown(state: RoomState, { seat }: { readonly seat: Seat }, at: number): RoomState {
  const returns = withSeat(state.returns, seat, usedLess(state.returns[seat], RETURNS, FIRST_RETURNS));
  const sittings = withSeat(state.sittings, seat, usedOnceMore(state.sittings[seat], SITTINGS, at));
  const moves = withSeat(state.moves, seat, UNUSED);
  return { ...withoutWordsOf(state, seat), sittings, returns, moves };
}

function withHeld(
  state: RoomState,
  seat: Seat,
  change: Partial<Pick<HeldSeat, 'presence' | 'secrets' | 'warn'>>,
): RoomState {
  const held = heldAt(state, seat);
  if (held === null) return state;
  return { ...state, seats: withSeat<SeatState>(state.seats, seat, { ...held, ...change }) };
}

function withReadiness(state: RoomState, { seat, ready }: RoomEvent & { kind: 'ready' }): RoomState {
  const held = state.seats[seat];
  if (held.kind !== 'person') return state;
  const unready = held.unready + (ready ? 0 : 1);
  return { ...state, seats: withSeat<SeatState>(state.seats, seat, { ...held, ready, unready }) };
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
