// How each player has played one deal so far, read from the tables.
import { type ClassEntry, type Round, seatView } from '../../shared-engine/index.ts';
import { type ClassReviewSources, classReview } from '../reviews/class-reviews.ts';
import type { ActiveClass } from './active-class.ts';
import { type ClassPlayer, playersWithPlace } from './state.ts';

export interface PlayerResult {
  readonly player: ClassPlayer;
  readonly entry: ClassEntry;
}

/** The round in which this player played this deal, as far as it has come; null where there was none. */
export function roundOf({ tables }: ActiveClass, player: ClassPlayer, deal: number): Round | null {
  const table = tables.at(player.room);
  const number = deal - player.first + 1;
  const play = table?.live.room.state.play;
  if (play?.number === number) return play.round;
  return table?.closed.get(number) ?? null;
}

/** Place in the drill of the deal on this player's table; below the first before it is dealt. */
export function dealOf({ tables }: ActiveClass, { room, first }: ClassPlayer): number {
  return first + (tables.at(room)?.live.room.state.play?.number ?? 0) - 1;
}

/** Reviews come from `sources`; null leaves them out. */
export async function resultsOf(
  live: ActiveClass,
  deal: number,
  sources: ClassReviewSources | null,
): Promise<PlayerResult[]> {
  const { aims } = live.state;
  const entries = playersWithPlace(live.state).map(async (player): Promise<PlayerResult[]> => {
    const round = roundOf(live, player, deal);
    if (round === null) return [];
    const { record } = seatView(round, player.seat);
    const review = sources && (await classReview(record, live.card, live.code, sources));
    const named = aims.filter((aim) => aim.player === player.id && aim.deal === deal);
    return [{ player, entry: { record, review, aims: named } }];
  });
  return (await Promise.all(entries)).flat();
}
