// What keeps a room's log short: how often something that could be repeated for ever may be, at once and with time.
import type { TableAction } from '../../shared-engine/index.ts';
import type { Allowance } from '../aggregate/allowance.ts';
import { MAX_EVENTS } from '../aggregate/log-limits.ts';
import type { RoomCommand } from './command.ts';
import type { RoomState } from './state.ts';

/**
 * How often a seat may withdraw its pass in one step. With that a round in which all four do so has 320 events of 40 KB
 * instead of 50, so that withdrawn passes need not be merged in the log.
 */
export const MAX_WITHDRAWALS = 5;
/** How often a person may take the own readiness back before a deal. */
export const MAX_UNREADY = 20;

/** New secrets of one seat, each of which is a return to it: four events. A page on a weak line tries less often. */
export const RETURNS: Allowance = { atOnce: 120, everyMs: 60_000 };
/**
 * People and bots of their own who sit down on one seat. It is the seat that tires, not the table: nobody is told apart
 * before sitting down, and one guest who comes and goes must not shut the others out.
 */
export const SITTINGS: Allowance = { atOnce: 20, everyMs: 120_000 };
/** Changes of place by whoever sits; it goes along, so that the places themselves do not tire for others. */
export const MOVES_MADE: Allowance = { atOnce: 20, everyMs: 60_000 };
/** What a host does with bots and invitations. */
export const CHANGES: Allowance = { atOnce: 60, everyMs: 60_000 };
/** Changes that are there for the next host, whatever the one before has used up. */
export const FIRST_CHANGES = 10;
/** What a seat says. */
export const PHRASES_SAID: Allowance = { atOnce: 5, everyMs: 20_000 };
/** From here on nothing is said any more, so that words never use up what deals need. */
export const MAX_EVENTS_FOR_WORDS = MAX_EVENTS / 2;
/** Returns that are there for whoever sits down, however often the seat was come back to before. */
export const FIRST_RETURNS = 5;

/** A round that runs is always finished, and who has a seat comes back to it: only what begins anew ends here. */
export function isUsedUp({ seq }: RoomState, command: RoomCommand): boolean {
  if (seq < MAX_EVENTS) return false;
  switch (command.kind) {
    case 'take-seat':
    case 'invite-bot':
    case 'seat-external-bot':
    case 'more-time':
      return true;
    case 'action':
      return beginsAnew(command.action);
    default:
      return false;
  }
}

function beginsAnew(action: TableAction): boolean {
  switch (action.kind) {
    case 'seat-bot':
    case 'set-terms':
    case 'swap-seats':
    case 'say':
      return true;
    case 'ready':
      return action.ready;
    case 'leave':
    case 'unseat':
    case 'revoke-invitation':
      return false;
  }
}
