// Freezes the steps of an anonymous class: what is told of each is computed once and stored, and never changes (rule AN3).
import {
  chosenIn,
  type FrozenSpread,
  frozenSpreads,
  isAfterVote,
  isAnonymous,
  MIN_COHORT,
  SEATS,
  type ShownStep,
  STEPS,
  type StepSpread,
  seatStep,
  spreadOfFrozen,
} from '../../shared-engine/index.ts';
import { ACCEPTED, type Answer, reject } from '../aggregate/decision.ts';
import { seatDecisions } from '../reviews/analysis-requests.ts';
import type { ActiveClass } from './active-class.ts';
import { cohortOf, commonRack, hasFinished } from './anonymity.ts';
import { resultsOf } from './player-results.ts';
import { type FrozenStep, frozenAt, isGuided, outcomesOf } from './state.ts';

type Place = Pick<FrozenStep, 'deal' | 'seat' | 'step'>;

/** Freezes every step that all who are counted have finished. What cannot be stored now is tried at the next request. */
export async function freezeFinished(live: ActiveClass): Promise<void> {
  for (const deal of live.state.cohorts.keys()) {
    await freezeWhere(live, deal, ({ seat, step }) =>
      cohortOf(live.state, deal, seat).every((one) => hasFinished(live, one, deal, step)),
    );
  }
}

/** Freezes all steps of the deals so far, with the choices made by now: the class goes on to something else. */
export async function freezeAll(live: ActiveClass): Promise<Answer> {
  for (const deal of live.state.cohorts.keys()) {
    const answer = await freezeWhere(live, deal, () => true);
    if (!answer.ok) return answer;
  }
  return ACCEPTED;
}

/**
 * Freezes the step that the teacher reveals, and those before it, with the choices made by now. Before the vote that
 * needs as many players as are counted at least; after it all, because a smaller number there would tell the vote.
 */
export async function freezeForReveal(live: ActiveClass, shown: ShownStep): Promise<Answer> {
  const { state } = live;
  const deal = state.dealt - 1;
  const { seat, step } = shown;
  if (!isAnonymous(state.terms) || cohortOf(state, deal, seat).length < MIN_COHORT) return ACCEPTED;
  await freezeFinished(live);
  if (frozenAt(live.state, { deal, seat, step })) return ACCEPTED;
  const there = cohortOf(state, deal, seat).filter((one) => hasFinished(live, one, deal, step));
  if (there.length < MIN_COHORT || (isAfterVote(step) && !isGuided(state))) return reject('too-few-chosen');
  const last = STEPS.indexOf(step);
  return freezeWhere(live, deal, (at) => at.seat === seat && STEPS.indexOf(at.step) <= last);
}

/** What is told of the steps of this deal, in the order of the round. */
export function toldOf({ state }: ActiveClass, deal: number): FrozenSpread[] {
  return SEATS.flatMap((seat) =>
    STEPS.flatMap((step) => [...(frozenAt(state, { deal, seat, step })?.spreads ?? [])]),
  );
}

/** A spread as it is shown: in a guided deal with what the class continued from. */
export function shownSpread(
  { state, analyses }: ActiveClass,
  deal: number,
  frozen: FrozenSpread,
): StepSpread {
  const spread = spreadOfFrozen(frozen, analyses.areMade ? state.analyzed : null);
  const [advancedWith] = outcomesOf(state, deal).flatMap((outcome) => {
    const chosen = chosenIn(seatStep(outcome, frozen.seat), frozen);
    return chosen === null ? [] : [chosen];
  });
  return advancedWith === undefined ? spread : { ...spread, advancedWith };
}

/** One at a time, so that no figures are computed twice; in order, because a step may depend on those before it. */
function freezeWhere(
  live: ActiveClass,
  deal: number,
  isDue: (at: Pick<Place, 'seat' | 'step'>) => boolean,
): Promise<Answer> {
  if (!isAnonymous(live.state.terms)) return Promise.resolve(ACCEPTED);
  return live.freezes.run(async () => {
    for (const seat of SEATS) {
      if (cohortOf(live.state, deal, seat).length < MIN_COHORT) continue;
      for (const step of STEPS) {
        const at = { deal, seat, step };
        if (frozenAt(live.state, at) || !isDue(at)) continue;
        const answer = await live.submit({
          kind: 'freeze',
          ...at,
          spreads: spreadsAt(live, at),
        });
        if (!answer.ok) return answer;
      }
    }
    return ACCEPTED;
  });
}

function spreadsAt(live: ActiveClass, at: Place): FrozenSpread[] {
  const { deal, seat, step } = at;
  const { state, card, code } = live;
  if (!mayTell(live, at)) return [];
  const rack = commonRack(live, at);
  const counted = new Set(cohortOf(state, deal, seat).map(({ id }) => id));
  const entries = resultsOf(live, deal, false)
    .filter(({ player }) => counted.has(player.id))
    .map(({ entry }) => entry);
  const sections = card.file.sections.map(({ id }) => id);
  return frozenSpreads({ seat, step, rack }, entries, sections, ({ record }, { kind, step: when }) => {
    const made = seatDecisions(record, card, code).find((one) => one.kind === kind && one.step === when);
    return made?.request.decisionId ?? null;
  });
}

/** How many chose at a step after the vote follows from earlier choices, which must have been told. */
function mayTell({ state }: ActiveClass, { deal, seat, step }: Place): boolean {
  if (isGuided(state) || !isAfterVote(step) || step === 'courtesy-ask') return true;
  const before = step === 'courtesy-pass' ? 'courtesy-ask' : 'vote';
  return (frozenAt(state, { deal, seat, step: before })?.spreads.length ?? 0) > 0;
}
