// The deals of a class that a player may play again at home, and when (rules TH2 and TH3).
import { rotatedScript, type TakenHome } from '../../shared-engine/index.ts';
import type { FollowedClass } from './followed-class.ts';
import { roundOf } from './player-results.ts';
import { type ClassPlayer, classTableTerms, playersIn } from './state.ts';

/** All that a device needs to play them without a network; nothing of a deal that is not over. */
export function takenHomeFor(live: FollowedClass, player: ClassPlayer): TakenHome {
  const { code, state } = live;
  const { drill, deals, terms, card } = state;
  return {
    code,
    title: drill.title,
    room: player.room,
    terms: { cardClosed: terms.cardClosed },
    tableTerms: { ...classTableTerms(state), deadline: null },
    bots: drill.bots.styles,
    card: card.kind === 'file' ? card.file : null,
    deals: placesOverFor(live, player).flatMap((place): TakenHome['deals'][number][] => {
      const deal = drill.deals[place];
      const prepared = deals[place];
      if (deal === undefined || prepared === undefined) return [];
      const { id, title = null, task = null } = deal;
      return [
        { id, title, task, deal: prepared, script: rotatedScript(deal), round: roundAt(player, place) },
      ];
    }),
  };
}

/** The rounds at the player's table whose deals may be taken home by now, which is asked far more often than for the deals. */
export function roundsHomeFor(live: FollowedClass, player: ClassPlayer): number[] {
  return live.state.takeHome ? placesOverFor(live, player).map((place) => roundAt(player, place)) : [];
}

const roundAt = ({ first }: ClassPlayer, place: number): number => place - first + 1;

function placesOverFor(live: FollowedClass, player: ClassPlayer): number[] {
  return [...live.state.deals.keys()].filter((place) => isOverFor(live, player, place));
}

/**
 * The deal that a player who joins now begins with, where that is not the one the class is at: what everybody has finished
 * may be on their devices with all its tiles, and played again by whoever joins anew. The last one is dealt all the same,
 * because no other comes: it then goes home to nobody who has not got it until this player has finished it.
 */
export function dealBehindTakenHome(live: FollowedClass): number | null {
  const { dealt, deals, players, wasTakenHome } = live.state;
  const place = dealt - 1;
  const isOver = players.some((one) => isOverFor(live, one, place));
  return wasTakenHome && isOver && dealt < deals.length ? dealt : null;
}

/** Whoever still plays it may sit beside somebody who knows all its tiles. */
function isOverFor(live: FollowedClass, player: ClassPlayer, place: number): boolean {
  const isClosed = (one: ClassPlayer): boolean => roundOf(live, one, place)?.phase === 'closed';
  const { ended } = live.state;
  return (
    isClosed(player) && (ended || playersIn(live.state).every((one) => one.first > place || isClosed(one)))
  );
}
