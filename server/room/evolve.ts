// (room, event) → the next room; total and silent, it believes every event of the log.
import {
  begin,
  evolve,
  type Four,
  forFour,
  neighbour,
  type Seat,
  withSeat,
} from '../../shared-engine/index.ts';
import type { Logged, RoomEvent } from './event.ts';
import type { Chair, Play, RoomState } from './state.ts';

/** The room that a log describes, or null when the log does not begin with the opening. */
export function replayRoom(log: readonly Logged[]): RoomState | null {
  const [first, ...rest] = log;
  if (first?.event.kind !== 'opened') return null;
  return rest.reduce(evolveRoom, openedRoom(first, first.event));
}

function openedRoom({ seq, at }: Logged, { door, terms, card }: RoomEvent & { kind: 'opened' }): RoomState {
  const chairs: Four<Chair> = forFour(() => ({ kind: 'empty' }));
  return { seq, at, door, terms, card, chairs, host: null, play: null, closed: false };
}

export function evolveRoom(before: RoomState, logged: Logged): RoomState {
  const state: RoomState = { ...before, seq: logged.seq, at: logged.at };
  const { event } = logged;
  switch (event.kind) {
    case 'opened':
      return state;
    case 'seat-taken': {
      const { seat, name, key } = event;
      const chair: Chair = { kind: 'person', name, key, since: logged.seq, ready: false };
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
      return { ...state, chairs: withReady(state.chairs, event.seat, event.ready) };
    case 'round':
      return { ...state, ...played(state, logged, event.event) };
    case 'closed':
      return { ...state, closed: true };
  }
}

function played(
  state: RoomState,
  { seq, at }: Logged,
  event: (RoomEvent & { kind: 'round' })['event'],
): { play: Play | null; chairs: Four<Chair> } {
  const { play, chairs } = state;
  if (event.kind === 'dealt') {
    const number = (play?.number ?? 0) + 1;
    return {
      play: { number, dealtSeq: seq, stepAt: at, round: begin(event) },
      chairs: forFour((seat) => unready(chairs[seat])),
    };
  }
  if (play === null) return { play, chairs };
  const stepAt = event.kind === 'settled' ? at : play.stepAt;
  return { play: { ...play, stepAt, round: evolve(play.round, event) }, chairs };
}

function withReady(chairs: Four<Chair>, seat: Seat, ready: boolean): Four<Chair> {
  const chair = chairs[seat];
  return chair.kind === 'person' ? withSeat<Chair>(chairs, seat, { ...chair, ready }) : chairs;
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
