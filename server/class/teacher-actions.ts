// What a teacher's dashboard does with the class. Two dashboards that act at once do it once (rule TK6).
import type { ClassAction } from '../../shared-engine/index.ts';
import { ACCEPTED, type Answer } from '../aggregate/decision.ts';
import type { Registry } from '../registry/registry.ts';
import type { ActiveClass } from './active-class.ts';
import { freezeAll, freezeForReveal } from './freeze.ts';
import { advanceClass } from './guided-deal.ts';
import { renamePlayer, seatPlayer } from './seat-players.ts';
import { isGuided, isMeantForAnother } from './state.ts';

/** `from` is the address of the teacher, as the limits count it. */
export function performAction(
  live: ActiveClass,
  action: ClassAction,
  { registry, from }: { readonly registry: Registry; readonly from: string },
): Promise<Answer> {
  switch (action.kind) {
    case 'more-time':
      return live.giveTime(action);
    case 'remove':
      return live.remove(action.player);
    case 'rename':
      return renamePlayer(live, action.player, action.name);
    case 'seat':
      return seatPlayer(live, registry, action, from);
    case 'advance':
      return advanceClass(live, action);
    case 'show':
      return show(live, action);
    case 'deal-next':
    case 'end':
      return goOn(live, action);
    default:
      return live.submit(action);
  }
}

async function show(live: ActiveClass, action: ClassAction & { kind: 'show' }): Promise<Answer> {
  const { shown } = action;
  // What was to be revealed belongs to a deal that is over, or has not begun here: nothing is frozen for it.
  const isFrozen = shown?.revealed && !isMeantForAnother(live.state, action);
  const frozen = isFrozen ? await freezeForReveal(live, shown) : ACCEPTED;
  return frozen.ok ? live.submit(action) : frozen;
}

/** What could be told of the steps so far is settled first, for the class does not come back to them. */
async function goOn(live: ActiveClass, action: ClassAction & { kind: 'deal-next' | 'end' }): Promise<Answer> {
  const { state } = live;
  const isOpen = isGuided(state) && action.kind === 'deal-next' && !state.dealClosed;
  const isOther = action.kind === 'deal-next' && isMeantForAnother(state, action);
  const frozen = isOpen || isOther || state.ended ? ACCEPTED : await freezeAll(live);
  return frozen.ok ? live.submit(action) : frozen;
}
