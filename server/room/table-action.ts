// What a seated person may do at the table outside a round: be ready, leave, and the host's actions.
import type { Seat, TableAction } from '../../shared-engine/index.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import type { SeatHolder } from './command.ts';
import type { RoomEvent } from './event.ts';
import type { TablePolicy } from './policy.ts';
import { isRoundRunning, namesAt, type RoomState } from './state.ts';

/** The caller has checked that `holder` sits there. An action that changes nothing is accepted without an event. */
export function decideAction(
  state: RoomState,
  holder: SeatHolder,
  action: TableAction,
  policy: TablePolicy,
): Decision<RoomEvent> {
  if (action.kind === 'ready') return decideReady(state, holder.seat, action.ready);
  if (!policy.hasHost) return reject('teacher-controlled');
  switch (action.kind) {
    case 'leave':
      return accept(vacating(state, holder.seat));
    case 'seat-bot':
      return decideBot(state, holder.seat, action);
    case 'unseat':
      return decideUnseat(state, holder.seat, action.seat);
  }
}

function decideReady(state: RoomState, seat: Seat, ready: boolean): Decision<RoomEvent> {
  if (isRoundRunning(state)) return reject('round-running');
  const held = state.seats[seat];
  const same = held.kind === 'person' && held.ready === ready;
  return accept(same ? [] : [{ kind: 'ready', seat, ready }]);
}

/** While a round runs a bot takes the tiles over, so that the others can finish it. */
export function vacating(state: RoomState, seat: Seat): RoomEvent[] {
  const vacated: RoomEvent = { kind: 'seat-vacated', seat };
  if (!isRoundRunning(state)) return [vacated];
  const name = botName(seat, namesAt(state));
  return [vacated, { kind: 'bot-seated', seat, name, style: FILL_IN_STYLE }];
}

function decideBot(
  state: RoomState,
  from: Seat,
  action: TableAction & { kind: 'seat-bot' },
): Decision<RoomEvent> {
  if (state.host !== from) return reject('not-the-host');
  if (isRoundRunning(state)) return reject('round-running');
  const held = state.seats[action.seat];
  if (held.kind === 'person') return reject('seat-taken');
  const name = held.kind === 'bot' ? held.name : botName(action.seat, namesAt(state));
  return accept([{ kind: 'bot-seated', seat: action.seat, name, style: action.style }]);
}

function decideUnseat(state: RoomState, from: Seat, seat: Seat): Decision<RoomEvent> {
  if (state.host !== from) return reject('not-the-host');
  const { kind } = state.seats[seat];
  // A person may be removed at any time: whoever took a seat over must not keep it until the close.
  if (kind === 'person') return accept(vacating(state, seat));
  if (isRoundRunning(state)) return reject('round-running');
  return accept(kind === 'empty' ? [] : [{ kind: 'seat-vacated', seat }]);
}
