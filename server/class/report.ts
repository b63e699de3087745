// The report of a class for its teacher: what was chosen, without names, and the players' sums if the terms allow it.
import {
  anonymousReport,
  choicesBy,
  classReport,
  type DrillReport,
  hasBetter,
  isAnonymous,
} from '../../shared-engine/index.ts';
import type { ActiveClass } from './active-class.ts';
import { freezeFinished, shownSpread, toldOf } from './freeze.ts';
import { type PlayerResult, resultsOf } from './player-results.ts';
import { playersIn } from './state.ts';

/** What is missing is asked for; it is the same report before and after a restart. */
export async function reportFor(live: ActiveClass): Promise<DrillReport> {
  if (!isAnonymous(live.state.terms)) return openReportFor(live);
  await freezeFinished(live);
  return anonymousReportFor(live);
}

/** From what was frozen alone: it is the same before and after anybody joins, leaves or goes on (rule AN3). */
function anonymousReportFor(live: ActiveClass): DrillReport {
  live.analyses.ask();
  const { drill, dealt, cohorts, ended, analyzed } = live.state;
  const analyses = live.analyses.areMade ? analyzed : null;
  const deals = drill.deals.slice(0, dealt).map((deal, place) => {
    const frozen = toldOf(live, place);
    const players = cohorts[place]?.length ?? 0;
    const report = anonymousReport(deal, { players, frozen, analyses }, live.card.file);
    return { ...report, steps: frozen.map((one) => shownSpread(live, place, one)) };
  });
  return { title: drill.title, ended, anonymous: true, deals, players: null };
}

function openReportFor(live: ActiveClass): DrillReport {
  live.analyses.ask();
  const { drill, dealt, terms, ended } = live.state;
  const played = drill.deals
    .slice(0, dealt)
    .map((deal, place) => ({ deal, results: resultsOf(live, place, true) }));
  return {
    title: drill.title,
    ended,
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

/** Sums of the player's own choices alone: the tiles a player held and passed are in that player's own review. */
function totalsOf(deal: string, results: readonly PlayerResult[], player: number): Totals[] {
  const entry = results.find((one) => one.player.id === player)?.entry;
  if (!entry) return [];
  const choices = choicesBy(entry);
  const own = choices.filter((choice) => choice.own);
  const isKnown = entry.analyses !== null && own.every(({ isPending }) => !isPending);
  const lost = own.flatMap(({ analyzed }) =>
    analyzed?.loss && hasBetter(analyzed.verdict) ? [analyzed.loss.value] : [],
  );
  const sum = lost.reduce((total, loss) => total + loss, 0);
  const { start = null, end = null } = entry.toGo ?? {};
  return [
    {
      deal,
      toGoStart: start,
      toGoEnd: end,
      winsLost: isKnown ? Math.round(sum * 1000) / 1000 : null,
      stoodIn: choices.length - own.length,
    },
  ];
}
