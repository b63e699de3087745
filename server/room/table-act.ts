// What a seated person may do at the table outside a round: be ready, leave, and the host's verbs.
import type { Seat, TableAct } from '../../shared-engine/index.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import type { Owner } from './command.ts';
import { accept, type RoomDecision, turnDown } from './decision.ts';
import type { RoomEvent } from './event.ts';
import { type RoomState, roundRuns } from './state.ts';

/** The caller has checked that `owner` sits there. An act that changes nothing is accepted without an event. */
export function decideAct(state: RoomState, owner: Owner, act: TableAct): RoomDecision {
  if (state.door === 'class' && act.kind !== 'ready') return turnDown('led-table');
  switch (act.kind) {
    case 'ready':
      return decideReady(state, owner.seat, act.ready);
    case 'leave':
      return accept(leaving(state, owner.seat));
    case 'seat-bot':
      return decideBot(state, owner.seat, act);
    case 'unseat':
      return decideUnseat(state, owner.seat, act.seat);
  }
}

function decideReady(state: RoomState, seat: Seat, ready: boolean): RoomDecision {
  if (roundRuns(state)) return turnDown('round-running');
  const chair = state.chairs[seat];
  const same = chair.kind === 'person' && chair.ready === ready;
  return accept(same ? [] : [{ kind: 'ready', seat, ready }]);
}

/** With tiles on the table a bot takes them over, so that the others can finish the round. */
export function leaving(state: RoomState, seat: Seat): RoomEvent[] {
  const freed: RoomEvent = { kind: 'seat-freed', seat };
  if (!roundRuns(state)) return [freed];
  return [freed, { kind: 'bot-seated', seat, name: botName(seat, namesOf(state)), style: FILL_IN_STYLE }];
}

function decideBot(state: RoomState, from: Seat, act: TableAct & { kind: 'seat-bot' }): RoomDecision {
  if (state.host !== from) return turnDown('not-the-host');
  if (roundRuns(state)) return turnDown('round-running');
  const chair = state.chairs[act.seat];
  if (chair.kind === 'person') return turnDown('seat-taken');
  const name = chair.kind === 'bot' ? chair.name : botName(act.seat, namesOf(state));
  return accept([{ kind: 'bot-seated', seat: act.seat, name, style: act.style }]);
}

function decideUnseat(state: RoomState, from: Seat, seat: Seat): RoomDecision {
  if (state.host !== from) return turnDown('not-the-host');
  if (roundRuns(state)) return turnDown('round-running');
  return accept(state.chairs[seat].kind === 'empty' ? [] : [{ kind: 'seat-freed', seat }]);
}

function namesOf(state: RoomState): string[] {
  return state.chairs.flatMap((chair) => (chair.kind === 'empty' ? [] : [chair.name]));
}
