// What the big screen shows to everybody in the classroom: one step, its rack and, once revealed, the spread; no name.
import {
  actualStep,
  type BigScreen,
  isAfterVote,
  isAnonymous,
  type ShownStep,
  STEPS,
  type StepSpread,
  seatView,
  spreadsOf,
  stepOf,
  stepOfOutcome,
  withheldSpread,
} from '../../shared-engine/index.ts';
import type { ActiveClass } from './active-class.ts';
import { commonRack, hidesPlaces, unfinishedDeal } from './anonymity.ts';
import { freezeFinished, shownSpread } from './freeze.ts';
import { resultsOf, roundOf } from './player-results.ts';
import { frozenAt, playersIn } from './state.ts';

/** Without its version, which is made of everything else. */
export async function bigScreenFor(live: ActiveClass): Promise<Omit<BigScreen, 'version'>> {
  await freezeFinished(live);
  live.analyses.ask();
  const { state, code, publicAddress } = live;
  const { drill, dealt, ended } = state;
  // Nothing is discussed any more.
  const shown = ended ? null : state.shown;
  const { sections } = live.card.file;
  const deal = drill.deals[dealt - 1];
  const step = shown && deal ? stepShown(live, shown) : null;
  return {
    code,
    address: publicAddress,
    title: drill.title,
    deal: deal ? { number: dealt, of: drill.deals.length, title: deal.title ?? null } : null,
    players: playersIn(state).length,
    answered: shown ? answeredAt(live, shown) : 0,
    shown,
    rack: step?.rack ?? null,
    aims: step?.spread?.aims ?? [],
    spread: shown?.revealed ? (step?.spread ?? null) : null,
    sections: Object.fromEntries(sections.map(({ id, name }) => [id, name])),
    ended,
  };
}

interface Shown {
  readonly rack: BigScreen['rack'];
  readonly spread: StepSpread | undefined;
}

function stepShown(live: ActiveClass, shown: ShownStep): Shown {
  if (isAnonymous(live.state.terms)) return anonymousStep(live, shown);
  const spread = spreadAt(live, shown);
  return { rack: rackAt(live, shown, spread?.rack ?? null), spread };
}

/** What was frozen, or that nothing is told, and a rack that the teacher knows anyway (rules AN3 and AN6). */
function anonymousStep(live: ActiveClass, { seat, step, kind }: ShownStep): Shown {
  const deal = live.state.dealt - 1;
  const rack = commonRack(live, { deal, seat, step });
  const told = frozenAt(live.state, { deal, seat, step })?.spreads.find((one) => one.kind === kind);
  return {
    rack,
    spread: told ? shownSpread(live, deal, told) : withheldSpread({ seat, step, kind }, rack),
  };
}

function answeredAt(live: ActiveClass, shown: ShownStep): number | null {
  const { state } = live;
  const hidden = isAfterVote(shown.step) || unfinishedDeal(live) < state.dealt - 1;
  if (hidesPlaces(state) && hidden) return null;
  return playersIn(state).filter(({ id }) => hasAnswered(live, id, shown)).length;
}

function spreadAt(live: ActiveClass, { seat, step, kind, revealed }: ShownStep): StepSpread | undefined {
  const entries = resultsOf(live, live.state.dealt - 1, revealed);
  const spreads = spreadsOf(
    entries.map(({ entry }) => entry),
    live.card.file.sections.map(({ id }) => id),
  );
  return spreads.find((one) => one.seat === seat && one.step === step && one.kind === kind);
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
