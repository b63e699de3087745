// Who is East in the next deal (rules D3, W1).
import type { Random } from './random.ts';
import { neighbor, SEATS, type Seat } from './seat.ts';

/**
 * `last` is the dealer before, null for the first deal, whose dealer is drawn; `player` sits alone, where anybody does.
 * Never East, the player is passed over as the deal rotates.
 */
export function nextDealer(
  {
    whoIsEast,
    player,
    last,
  }: {
    readonly whoIsEast: 'in-turn' | 'always' | 'never';
    readonly player: Seat;
    readonly last: Seat | null;
  },
  random: Random,
): Seat {
  if (whoIsEast === 'always') return player;
  const next = last === null ? SEATS[random.below(4)]! : neighbor(last, 'right');
  return whoIsEast === 'never' && next === player ? neighbor(next, 'right') : next;
}
