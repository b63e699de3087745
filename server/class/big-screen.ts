// What the big screen shows to everybody in the classroom: one step, its rack and, once revealed, the spread; no name.
import {
  actualStep,
  anonymizedSpread,
  type BigScreen,
  type ChoiceReview,
  type ShownStep,
  STEPS,
  seatView,
  spreadsOf,
  stepOf,
  stepOfOutcome,
} from '../../shared-engine/index.ts';
import type { Reviewer } from '../ports.ts';
import type { ClassReviewSources } from '../reviews/class-reviews.ts';
import type { SharedAnalyzer } from '../reviews/shared-analyses.ts';
import type { ActiveClass } from './active-class.ts';
import { anonymityFor } from './anonymity.ts';
import { resultsOf, roundOf } from './player-results.ts';
import { playersIn } from './state.ts';

export interface BigScreenPorts {
  readonly reviewer: Reviewer;
  /** Null where there are quick reviews alone. */
  readonly analyzer: SharedAnalyzer | null;
}

export async function bigScreenFor(live: ActiveClass, ports: BigScreenPorts): Promise<BigScreen> {
  const { state, version, code } = live;
  const { drill, dealt, shown, ended } = state;
  const players = playersIn(state);
  const { sections } = live.card.card;
  const deal = drill.deals[dealt - 1];
  const spread =
    shown && deal
      ? await spreadAt(live, shown, shown.revealed ? sourcesFor(live, shown, ports) : null)
      : undefined;
  return {
    version,
    code,
    title: drill.title,
    deal: deal ? { number: dealt, of: drill.deals.length, title: deal.title ?? null } : null,
    players: players.length,
    answered: shown ? players.filter(({ id }) => hasAnswered(live, id, shown)).length : 0,
    shown,
    rack: shown ? rackAt(live, shown, spread?.rack ?? null) : null,
    aims: spread?.aims ?? [],
    spread: shown?.revealed ? (spread ?? null) : null,
    sections: Object.fromEntries(sections.map(({ id, name }) => [id, name])),
    ended,
  };
}

/** What is on the big screen is analyzed deeply, and shown anew when that is done. */
function sourcesFor(live: ActiveClass, { step, kind }: ShownStep, ports: BigScreenPorts): ClassReviewSources {
  const wanted = (choice: ChoiceReview): boolean => choice.step === step && choice.kind === kind;
  return { ...ports, wanted, onAnalyzed: () => live.notifyChange() };
}

async function spreadAt(
  live: ActiveClass,
  { seat, step, kind }: ShownStep,
  sources: ClassReviewSources | null,
) {
  const entries = await resultsOf(live, live.state.dealt - 1, sources);
  const spreads = spreadsOf(
    entries.map(({ entry }) => entry),
    live.card.card.sections.map(({ id }) => id),
  );
  const spread = spreads.find((one) => one.seat === seat && one.step === step && one.kind === kind);
  const anonymity = anonymityFor(live, live.state.dealt - 1);
  return spread && anonymity ? anonymizedSpread(spread, anonymity(spread)) : spread;
}

/** The rack as dealt is known to the teacher; a later one is shown only if several players held it. */
function rackAt(live: ActiveClass, { seat, step }: ShownStep, faced: BigScreen['rack']): BigScreen['rack'] {
  const { deals, dealt } = live.state;
  return STEPS[0] === step ? (deals[dealt - 1]?.prepared[seat] ?? null) : faced;
}

function hasAnswered(live: ActiveClass, id: number, { seat, step }: ShownStep): boolean {
  const player = live.state.players[id];
  const round = player && roundOf(live, player, live.state.dealt - 1);
  if (!player || !round || player.seat !== seat) return false;
  const view = seatView(round, player.seat);
  const open = stepOf(view.stage);
  return open === step
    ? view.answer !== null
    : view.record.steps.some((_, place) => {
        const done = actualStep(view.record, place);
        return done !== null && stepOfOutcome(done) === step;
      });
}
