// What a seated person may do at the table outside a round: be ready, leave, and the host's actions.
import type { Seat, TableAction } from '../../shared-engine/index.ts';
import { isAllowed } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import type { RoomCommand } from './command.ts';
import type { RoomEvent } from './event.ts';
import { CHANGES, MAX_UNREADY } from './growth.ts';
import type { TablePolicy } from './policy.ts';
import { isRoundRunning, namesAt, type RoomState } from './state.ts';

/** The caller has checked that the holder sits there. An action that changes nothing is accepted without an event. */
export function decideAction(
  state: RoomState,
  { holder, action }: RoomCommand & { kind: 'action' },
  policy: TablePolicy,
  at: number,
): Decision<RoomEvent> {
  if (action.kind === 'ready') return decideReady(state, holder.seat, action.ready);
  if (!policy.hasHost) return reject('teacher-controlled');
  switch (action.kind) {
    case 'leave':
      return accept(vacating(state, holder.seat));
    case 'seat-bot':
      return decideBot(state, holder.seat, action, at);
    case 'unseat':
      return decideUnseat(state, holder.seat, action.seat, at);
  }
}

function decideReady(state: RoomState, seat: Seat, ready: boolean): Decision<RoomEvent> {
  if (isRoundRunning(state)) return reject('round-running');
  const held = state.seats[seat];
  if (held.kind !== 'person') return reject('not-seated');
  if (!ready && held.ready && held.unready >= MAX_UNREADY) return reject('stays-ready');
  return accept(held.ready === ready ? [] : [{ kind: 'ready', seat, ready }]);
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
  at: number,
): Decision<RoomEvent> {
  if (state.host !== from) return reject('not-the-host');
  if (isRoundRunning(state)) return reject('round-running');
  const held = state.seats[action.seat];
  if (held.kind === 'person') return reject('seat-taken');
  if (held.kind === 'bot' && held.style === action.style) return accept([]);
  if (!isAllowed(state.changes, CHANGES, at)) return reject('too-often');
  const name = held.kind === 'bot' ? held.name : botName(action.seat, namesAt(state));
  return accept([{ kind: 'bot-seated', seat: action.seat, name, style: action.style }]);
}

function decideUnseat(state: RoomState, from: Seat, seat: Seat, at: number): Decision<RoomEvent> {
  if (state.host !== from) return reject('not-the-host');
  const { kind } = state.seats[seat];
  // A person may be removed at any time: whoever took a seat over must not keep it until the close.
  if (kind === 'person') return accept(vacating(state, seat));
  if (isRoundRunning(state)) return reject('round-running');
  if (kind === 'empty') return accept([]);
  return isAllowed(state.changes, CHANGES, at)
    ? accept([{ kind: 'seat-vacated', seat }])
    : reject('too-often');
}
