// What a seated person may do at the table outside a round: be ready, leave, and the host's actions.
import { isDeepStrictEqual } from 'node:util';
import { SEATS, type Seat, type TableAction, termsFrom } from '../../shared-engine/index.ts';
import { isAllowed } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import type { RoomCommand } from './command.ts';
import type { RoomEvent } from './event.ts';
import { CHANGES, MAX_UNREADY } from './growth.ts';
import type { TablePolicy } from './policy.ts';
import { heldAt, isRoundRunning, namesAt, type RoomState } from './state.ts';
import { decideSwap, decideWords } from './table-talk.ts';

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
    case 'swap-seats':
      return decideSwap(state, holder.seat, action.seat, at);
    case 'say':
      return decideWords(state, holder.seat, action, at);
    case 'set-terms':
      return decideTerms(state, holder.seat, action, at);
    case 'revoke-invitation': {
      const { seat } = action;
      if (state.host !== holder.seat) return reject('not-the-host');
      return accept(state.invitations[seat] === null ? [] : [{ kind: 'invitation-revoked', seat }]);
    }
  }
}

function decideReady(state: RoomState, seat: Seat, ready: boolean): Decision<RoomEvent> {
  if (isRoundRunning(state)) return reject('round-running');
  const held = state.seats[seat];
  // Nobody waits for a bot to be ready.
  if (held.kind !== 'person') return accept([]);
  if (!ready && held.ready && held.unready >= MAX_UNREADY) return reject('stays-ready');
  return accept(held.ready === ready ? [] : [{ kind: 'ready', seat, ready }]);
}

/** The host's external bots go with the host, who answers for them. */
export function vacating(state: RoomState, seat: Seat): RoomEvent[] {
  const bots = SEATS.filter((one) => state.host === seat && state.seats[one].kind === 'external-bot');
  return [seat, ...bots].flatMap((one) => vacatingOne(state, one));
}

/** While a round runs a bot of the server takes the tiles over, so that the others can finish it. */
function vacatingOne(state: RoomState, seat: Seat): RoomEvent[] {
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
  if (heldAt(state, action.seat) !== null) return reject('seat-taken');
  const held = state.seats[action.seat];
  if (held.kind === 'bot' && held.style === action.style) return accept([]);
  if (!isAllowed(state.changes, CHANGES, at)) return reject('too-often');
  const name = held.kind === 'bot' ? held.name : botName(action.seat, namesAt(state));
  return accept([{ kind: 'bot-seated', seat: action.seat, name, style: action.style }]);
}

/** They are fixed while tiles are on the table (rules W1 to W6). */
function decideTerms(
  state: RoomState,
  from: Seat,
  { terms: asked }: TableAction & { kind: 'set-terms' },
  at: number,
): Decision<RoomEvent> {
  if (state.host !== from) return reject('not-the-host');
  if (isRoundRunning(state)) return reject('round-running');
  const agreed = termsFrom(asked, state.mode);
  if (!agreed.ok) return agreed;
  const { terms } = agreed;
  if (isDeepStrictEqual(terms, state.terms)) return accept([]);
  return isAllowed(state.changes, CHANGES, at)
    ? accept([{ kind: 'terms-changed', terms }])
    : reject('too-often');
}

function decideUnseat(state: RoomState, from: Seat, seat: Seat, at: number): Decision<RoomEvent> {
  if (state.host !== from) return reject('not-the-host');
  // Whoever holds a seat may be removed at any time: who took one over must not keep it until the close.
  if (heldAt(state, seat) !== null) return accept(vacating(state, seat));
  if (isRoundRunning(state)) return reject('round-running');
  if (state.seats[seat].kind === 'empty') return accept([]);
  return isAllowed(state.changes, CHANGES, at)
    ? accept([{ kind: 'seat-vacated', seat }])
    : reject('too-often');
}
