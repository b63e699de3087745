// The report of a class for its teacher: what was chosen, without names, and the players' sums if the terms allow it.
import { classReport, type DrillReport } from '../../shared-engine/index.ts';
import type { ActiveClass } from './active-class.ts';
import { anonymityFor } from './anonymity.ts';
import type { BigScreenPorts } from './big-screen.ts';
import { type PlayerResult, resultsOf } from './player-results.ts';
import { playersIn } from './state.ts';

export async function reportFor(live: ActiveClass, ports: BigScreenPorts): Promise<DrillReport> {
  const { drill, dealt, terms } = live.state;
  const sources = { ...ports, wanted: () => false, onAnalyzed() {} };
  const played = await Promise.all(
    drill.deals.slice(0, dealt).map(async (deal, place) => ({
      deal,
      anonymity: anonymityFor(live, place),
      results: await resultsOf(live, place, sources),
    })),
  );
  return {
    title: drill.title,
    deals: played.map(({ deal, results, anonymity }) =>
      classReport(
        deal,
        results.map(({ entry }) => entry),
        live.card.card,
        anonymity,
      ),
    ),
    players: terms.names
      ? playersIn(live.state).map(({ id, name }) => ({
          name,
          deals: played.flatMap(({ deal, results }) => totalsOf(deal.id, results, id)),
        }))
      : null,
  };
}

type Totals = NonNullable<DrillReport['players']>[number]['deals'][number];

/** Sums alone: the tiles a player held and passed are in that player's own review. */
function totalsOf(deal: string, results: readonly PlayerResult[], player: number): Totals[] {
  const review = results.find((one) => one.player.id === player)?.entry.review;
  if (!review) return [];
  const own = review.choices.filter(({ by }) => by === 'player');
  const loss = own.reduce((sum, choice) => sum + choice.loss, 0);
  const { toGoStart, toGoEnd } = review;
  return [{ deal, toGoStart, toGoEnd, loss: Math.round(loss * 1000) / 1000 }];
}
