// (room, event) → the next room; total and silent, it believes every event of the log.
import {
  begin,
  evolve,
  type Four,
  forFour,
  neighbour,
  type RoundEvent,
  type Seat,
  withSeat,
} from '../../shared-engine/index.ts';
import type { Logged, RoomEvent } from './event.ts';
import { isHeld, UNLED } from './lead.ts';
import type { Chair, PersonChair, Play, Presence, RoomState } from './state.ts';

/** Secrets of one seat that are good at the same time. */
const MOST_KEYS = 6;

/** The room that a log describes, or null when the log does not begin with the opening. */
export function replayRoom(log: readonly Logged[]): RoomState | null {
  const [first, ...rest] = log;
  if (first?.event.kind !== 'opened') return null;
  return rest.reduce(evolveRoom, openedRoom(first, first.event));
}

function openedRoom({ seq, at }: Logged, { door, terms, card }: RoomEvent & { kind: 'opened' }): RoomState {
  const chairs: Four<Chair> = forFour(() => ({ kind: 'empty' }));
  return {
    seq,
    at,
    door,
    terms,
    card,
    chairs,
    host: null,
    play: null,
    lead: UNLED,
    inHandOf: [],
    closed: false,
  };
}

export function evolveRoom(before: RoomState, logged: Logged): RoomState {
  const state: RoomState = { ...before, seq: logged.seq, at: logged.at };
  const { event } = logged;
  switch (event.kind) {
    case 'opened':
      return state;
    case 'seat-taken': {
      const { seat, name, key } = event;
      const presence: Presence = { kind: 'gone', since: logged.at };
      const chair: Chair = {
        kind: 'person',
        name,
        keys: [key],
        since: logged.seq,
        ready: false,
        presence,
      };
      return { ...state, chairs: withSeat(state.chairs, seat, chair), host: state.host ?? seat };
    }
    case 'seat-freed': {
      const chairs = withSeat<Chair>(state.chairs, event.seat, { kind: 'empty' });
      return {
        ...state,
        chairs,
        host: state.host === event.seat ? nextHost(chairs, event.seat) : state.host,
      };
    }
    case 'bot-seated': {
      const { seat, name, style } = event;
      return { ...state, chairs: withSeat<Chair>(state.chairs, seat, { kind: 'bot', name, style }) };
    }
    case 'ready':
      return withPerson(state, event.seat, { ready: event.ready });
    case 'came':
      return withPerson(state, event.seat, { presence: hereBy(event) });
    case 'went':
      return withPerson(state, event.seat, { presence: { kind: 'gone', since: logged.at } });
    case 'key-changed':
      return withNewKey(state, event);
    case 'in-hand':
      return { ...state, inHandOf: [...event.others, event.node], play: watched(state, logged.at, event) };
    case 'led':
      return { ...state, lead: event.lead, play: released(state, logged.at, event) };
    case 'more-time':
      return {
        ...state,
        play: state.play && { ...state.play, moreTime: state.play.moreTime + event.seconds },
      };
    case 'class':
      return state;
    case 'round':
      return { ...state, ...played(state, logged, event.event) };
    case 'closed':
      return { ...state, closed: true };
  }
}

function played(
  state: RoomState,
  { seq, at }: Logged,
  event: RoundEvent,
): { play: Play | null; chairs: Four<Chair> } {
  const { play, chairs } = state;
  if (event.kind === 'dealt') {
    const number = (play?.number ?? 0) + 1;
    return {
      play: { number, dealtSeq: seq, stepAt: at, round: begin(event), takenBack: [0, 0, 0, 0], moreTime: 0 },
      chairs: forFour((seat) => unready(chairs[seat])),
    };
  }
  if (play === null) return { play, chairs };
  return { play: { ...play, ...stepOf(play, at, event), round: evolve(play.round, event) }, chairs };
}

function stepOf(
  { stepAt, takenBack, moreTime }: Play,
  at: number,
  event: RoundEvent,
): Pick<Play, 'stepAt' | 'takenBack' | 'moreTime'> {
  switch (event.kind) {
    case 'settled':
    case 'followed':
      return { stepAt: at, takenBack: [0, 0, 0, 0], moreTime: 0 };
    case 'taken-back':
      return { stepAt, takenBack: withSeat(takenBack, event.seat, takenBack[event.seat] + 1), moreTime };
    default:
      return { stepAt, takenBack, moreTime };
  }
}

function hereBy({ node, line, from }: RoomEvent & { kind: 'came' }): Presence {
  return { kind: 'here', node, line, ...(from && { from }) };
}

/** Whoever returns gets a new secret; those not brought for some returns are worth nothing any more. */
function withNewKey(state: RoomState, { seat, key, before }: RoomEvent & { kind: 'key-changed' }): RoomState {
  const chair = state.chairs[seat];
  if (chair.kind !== 'person') return state;
  const others = chair.keys.filter((other) => other !== before);
  return withPerson(state, seat, { keys: [...others, before, key].slice(-MOST_KEYS) });
}

function withPerson(state: RoomState, seat: Seat, change: Partial<PersonChair>): RoomState {
  const chair = state.chairs[seat];
  if (chair.kind !== 'person') return state;
  return { ...state, chairs: withSeat<Chair>(state.chairs, seat, { ...chair, ...change }) };
}

/** The step gets its whole time where nobody watched the clock before (rule K3). */
function watched({ play }: RoomState, at: number, { others }: RoomEvent & { kind: 'in-hand' }): Play | null {
  return play && others.length === 0 ? { ...play, stepAt: at } : play;
}

/** Time during which a table was held is not charged. */
function released({ play, lead }: RoomState, at: number, event: RoomEvent & { kind: 'led' }): Play | null {
  const lifted = play !== null && isHeld(play.round, lead) && !isHeld(play.round, event.lead);
  return lifted ? { ...play, stepAt: at } : play;
}

function unready(chair: Chair): Chair {
  return chair.kind === 'person' ? { ...chair, ready: false } : chair;
}

/** The next person to the right of the host who left. */
function nextHost(chairs: Four<Chair>, from: Seat): Seat | null {
  let seat = neighbour(from, 'right');
  while (seat !== from) {
    if (chairs[seat].kind === 'person') return seat;
    seat = neighbour(seat, 'right');
  }
  return null;
}
