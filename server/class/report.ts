// The report of a class for its teacher: what was chosen, without names, and the players' sums if the terms allow it.
import { anonymousReport, classReport, type DrillReport, isAnonymous } from '../../shared-engine/index.ts';
import type { ActiveClass } from './active-class.ts';
import type { BigScreenPorts } from './big-screen.ts';
import { freezeFinished, shownSpread, toldOf } from './freeze.ts';
import { type PlayerResult, resultsOf } from './player-results.ts';
import { playersIn } from './state.ts';

export async function reportFor(live: ActiveClass, ports: BigScreenPorts): Promise<DrillReport> {
  return isAnonymous(live.state.terms) ? anonymousReportFor(live, ports) : openReportFor(live, ports);
}

/** From what was frozen alone: it is the same before and after anybody joins, leaves or goes on (rule AN3). */
async function anonymousReportFor(live: ActiveClass, ports: BigScreenPorts): Promise<DrillReport> {
  await freezeFinished(live, ports);
  const { drill, dealt, cohorts } = live.state;
  const deals = drill.deals.slice(0, dealt).map((deal, place) => {
    const told = toldOf(live, place);
    const report = anonymousReport(deal, cohorts[place]?.length ?? 0, told, live.card.file);
    return { ...report, steps: told.map((frozen) => shownSpread(live, place, frozen)) };
  });
  return { title: drill.title, anonymous: true, deals, players: null };
}

async function openReportFor(live: ActiveClass, ports: BigScreenPorts): Promise<DrillReport> {
  const { drill, dealt, terms } = live.state;
  const sources = { ...ports, wanted: () => false, onAnalyzed() {} };
  const played = await Promise.all(
    drill.deals.slice(0, dealt).map(async (deal, place) => ({
      deal,
      results: await resultsOf(live, place, sources),
    })),
  );
  return {
    title: drill.title,
    anonymous: false,
    deals: played.map(({ deal, results }) =>
      classReport(
        deal,
        results.map(({ entry }) => entry),
        live.card.file,
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
