// How each player has played one deal so far, read from the tables.
import {
  type AnalyzedChoice,
  type ClassEntry,
  type Round,
  type Seat,
  type SeatRecord,
  seatView,
} from '../../shared-engine/index.ts';
import { seatDecisions } from '../reviews/analysis-requests.ts';
import type { FollowedClass } from './followed-class.ts';
import { type ClassPlayer, playersWithPlace } from './state.ts';

export interface PlayerResult {
  readonly player: ClassPlayer;
  readonly entry: ClassEntry;
}

/** The round in which this player played this deal, as far as it has come; null where there was none. */
export function roundOf({ tables }: FollowedClass, player: ClassPlayer, deal: number): Round | null {
  const table = tables.at(player.room);
  const number = deal - player.first + 1;
  const play = table?.live.room.state.play;
  if (play?.number === number) return play.round;
  return table?.closed.get(number) ?? null;
}

/** Place in the drill of the deal on this player's table; below the first before it is dealt. */
export function dealOf({ tables }: FollowedClass, { room, first }: ClassPlayer): number {
  return first + (tables.at(room)?.live.room.state.play?.number ?? 0) - 1;
}

/** `withAnalyses`: whether what the choices cost is wanted too, as far as it is stored. */
export function resultsOf(live: FollowedClass, deal: number, withAnalyses: boolean): PlayerResult[] {
  const { aims, rounds } = live.state;
  return playersWithPlace(live.state).flatMap((player): PlayerResult[] => {
    const round = roundOf(live, player, deal);
    if (round === null) return [];
    const { record } = seatView(round, player.seat);
    const isOf = (one: { readonly player: number; readonly deal: number }): boolean =>
      one.player === player.id && one.deal === deal;
    const analyses = withAnalyses && live.analyses.areMade ? storedAnalyses(live, round, record) : null;
    const toGo = rounds.find(isOf)?.toGo ?? null;
    return [{ player, entry: { record, analyses, toGo, aims: aims.filter(isOf) } }];
  });
}

/** The ids of the decisions in a round never change, and hashing them anew for every page would take longest. */
const decisionIds = new WeakMap<Round, Map<Seat, readonly string[]>>();

function storedAnalyses(
  { state, card, code }: FollowedClass,
  round: Round,
  record: SeatRecord,
): readonly AnalyzedChoice[] {
  const bySeat = decisionIds.get(round) ?? new Map<Seat, readonly string[]>();
  decisionIds.set(round, bySeat);
  const known = bySeat.get(record.seat);
  const ids = known ?? seatDecisions(record, card, code).map(({ request }) => request.decisionId);
  bySeat.set(record.seat, ids);
  return ids.flatMap((decisionId) => state.analyzed[decisionId] ?? []);
}
