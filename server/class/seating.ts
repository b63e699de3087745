// Who of a class sits where and under which name, as far as the teacher may change it.
import type { Seat } from '../../shared-engine/index.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import type { ClassEvent } from './event.ts';
import { type ClassPlayer, type ClassState, playersAtTable, playersIn } from './state.ts';

export type SeatingCommand =
  | { readonly kind: 'rename'; readonly player: number; readonly name: string }
  /** A place at a table of the class; whoever has it takes the player's. */
  | { readonly kind: 'seat'; readonly player: number; readonly room: string; readonly seat: Seat };

export function decideSeating(state: ClassState, command: SeatingCommand): Decision<ClassEvent> {
  const one = playersIn(state).find(({ id }) => id === command.player);
  if (one === undefined) return reject('no-such-player');
  if (command.kind === 'rename') {
    const { player, name } = command;
    return accept(one.name === name ? [] : [{ kind: 'renamed', player, name }]);
  }
  const { player, room, seat } = command;
  if (!arePlacesOpen(state)) return reject('places-fixed');
  return accept(one.room === room && one.seat === seat ? [] : [{ kind: 'seated', player, room, seat }]);
}

/** What was dealt to a player is at that player's table for good. */
export function arePlacesOpen(state: ClassState): boolean {
  return playersAtTable(state) > 1 && state.dealt === 0;
}

/** The players once one of them has the place: whoever had it takes the one that becomes free. */
export function playersSeated(
  players: readonly ClassPlayer[],
  { player, room, seat }: ClassEvent & { kind: 'seated' },
): readonly ClassPlayer[] {
  const from = players[player]!;
  return players.map((one) => {
    if (one.id === player) return { ...one, room, seat, seatedAs: one.name };
    if (one.room !== room || one.seat !== seat) return one;
    // Somebody who has left leaves nothing there before the first deal.
    return one.left
      ? { ...one, replaced: true }
      : { ...one, room: from.room, seat: from.seat, seatedAs: one.name };
  });
}
