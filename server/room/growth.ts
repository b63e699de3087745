// What a room no longer takes when its log is long: everything that could be repeated for ever but a round's choices.
import type { TableAction } from '../../shared-engine/index.ts';
import { MAX_EVENTS, MAX_EVENTS_WITH_RETURNS } from '../aggregate/log-limits.ts';
import type { RoomCommand } from './command.ts';
import type { RoomState } from './state.ts';

/** How often a seat may withdraw its pass in one step. */
export const MAX_WITHDRAWALS = 5;

/**
 * A round that runs is always finished: choices, bots, stand-ins and disconnecting are never counted here, and who
 * comes back may do so as many times again as there were events.
 */
export function isUsedUp({ seq }: RoomState, command: RoomCommand): boolean {
  switch (command.kind) {
    case 'take-seat':
      return seq >= MAX_EVENTS;
    case 'action':
      return isRepeatable(command.action) && seq >= MAX_EVENTS;
    case 'connect':
    case 'issue-secret':
    case 'confirm-secret':
    case 'more-time':
      return seq >= MAX_EVENTS_WITH_RETURNS;
    default:
      return false;
  }
}

/** Leaving is done once, and so is no longer being ready where nobody gets ready again. */
function isRepeatable(action: TableAction): boolean {
  return action.kind !== 'leave' && (action.kind !== 'ready' || action.ready);
}
