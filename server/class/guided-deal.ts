// A guided deal: the step it has come to, who has not chosen there yet, and what was chosen.
import { isDeepStrictEqual } from 'node:util';
import {
  type AnswerChoice,
  advanceGuidedDeal,
  begin,
  type ClassAction,
  choiceAt,
  decisionFor,
  evolve,
  type Face,
  facesOf,
  type GuidedDeal,
  isAnonymous,
  openRound,
  PASS_SIZE,
  type Resolved,
  type Round,
  type Step,
  seatStep,
  sortFaces,
  stepOf,
  stepOfOutcome,
} from '../../shared-engine/index.ts';
import { ACCEPTED, type Answer, reject } from '../aggregate/decision.ts';
import type { ActiveClass } from './active-class.ts';
import { dealOf } from './player-results.ts';
import {
  type ClassState,
  classTableTerms,
  frozenAt,
  isGuided,
  isMeantForAnother,
  playersWithPlace,
} from './state.ts';

/** In a guided deal every player sits alone, on the seat to which the drill's deals are rotated. */
const PLAYER = 0;

/** All tables continue from this choice; `stepIndex` is the step for which it is meant, counted from 0. */
export async function advanceClass(
  live: ActiveClass,
  action: ClassAction & { kind: 'advance' },
): Promise<Answer> {
  const { stepIndex, choice } = action;
  const { state } = live;
  const round = guidedRound(live);
  if (!isGuided(state) || round === null) return reject('not-guided');
  if (isMeantForAnother(state, action)) return reject('class-moved-on');
  // Another dashboard has chosen the same: one action.
  if (hasContinuedWith(state, stepIndex, choice)) return ACCEPTED;
  if (stepIndex !== state.outcomes.length || state.dealClosed) return reject('already-advanced');
  const { waiting, reached } = openStepOf(live);
  const [at] = reached;
  if (waiting > 0 || at === undefined) return reject('not-all-chosen');
  const next = advanceGuidedDeal(round, at, PLAYER, choice);
  if (!next.ok) return next;
  const { outcome, closed } = next;
  const answer = await live.submit({ kind: 'advance', deal: state.dealt - 1, stepIndex, outcome, closed });
  return answer.ok || !hasContinuedWith(live.state, stepIndex, choice) ? answer : ACCEPTED;
}

function hasContinuedWith({ outcomes }: ClassState, stepIndex: number, choice: AnswerChoice | null): boolean {
  const outcome = outcomes[stepIndex];
  if (outcome === undefined) return false;
  return isDeepStrictEqual(sorted(choiceAt(seatStep(outcome, PLAYER), PLAYER)), sorted(choice));
}

/** The order in which tiles were picked makes no other choice. */
function sorted(choice: AnswerChoice | null): AnswerChoice | null {
  return choice?.kind === 'pass' ? { ...choice, tiles: sortFaces(choice.tiles) } : choice;
}

const NOTHING_OPEN = {
  step: null,
  needed: 0,
  blindAllowed: false,
  rack: [],
  waiting: 0,
  chosen: [],
} as const;

/** What the dashboard shows of it; null where the class is not guided or nothing is dealt. */
export function guidedDealFor(live: ActiveClass): GuidedDeal | null {
  const round = guidedRound(live);
  if (!isGuided(live.state) || round === null) return null;
  const { outcomes, dealClosed } = live.state;
  if (dealClosed) return { stepIndex: outcomes.length, ...NOTHING_OPEN };
  const { waiting, reached } = openStepOf(live);
  const decision = decisionFor(round, PLAYER, round.terms);
  return {
    stepIndex: outcomes.length,
    step: stepOf(round),
    needed: decision?.kind === 'pass' ? decision.count : 0,
    blindAllowed: decision?.kind === 'pass' && decision.blindAllowed,
    rack: facesOf(round.racks[PLAYER]),
    waiting,
    chosen: waiting > 0 ? [] : shownOf(live, reached),
  };
}

/** The round as far as the class has come, with the open step still unanswered. */
function guidedRound({ state }: ActiveClass): Round | null {
  const { deals, dealt, outcomes } = state;
  const deal = deals[dealt - 1];
  if (deal === undefined) return null;
  const dealtRound = begin(openRound(deal, classTableTerms(state)));
  return outcomes.reduce<Round>((round, outcome) => evolve(round, { kind: 'resolved', outcome }), dealtRound);
}

/** How many of the players' tables have not finished the open step, and its outcomes at the others. */
function openStepOf(live: ActiveClass): { waiting: number; reached: readonly Resolved[] } {
  const { dealt, outcomes } = live.state;
  const reachedAt = playersWithPlace(live.state).map((player): Resolved | null => {
    const round = live.tables.at(player.room)?.live.room.state.play?.round;
    if (!round || dealOf(live, player) !== dealt - 1 || (round.actualSteps?.length ?? 0) !== outcomes.length)
      return null;
    return round.resolved[outcomes.length] ?? null;
  });
  const reached = reachedAt.flatMap((outcome) => outcome ?? []);
  return { waiting: reachedAt.length - reached.length, reached };
}

/** In an anonymous class only what is told of the frozen step (rule AN4). */
function shownOf({ state }: ActiveClass, reached: readonly Resolved[]): GuidedDeal['chosen'] {
  if (!isAnonymous(state.terms)) return countsOf(reached);
  const [step] = reached.map(stepOfOutcome);
  const at = step && frozenAt(state, { deal: state.dealt - 1, seat: PLAYER, step });
  const told = at?.spreads.find(({ kind }) => kind !== 'blind');
  return (told?.cells ?? []).map(({ chosen, count }) => ({
    choice: choiceOf(at!.step, chosen),
    players: count,
  }));
}

/** What is not passed from the rack goes blind. */
function choiceOf(step: Step, chosen: readonly Face[] | number): AnswerChoice {
  if (step === 'vote') return { kind: 'vote', step, go: chosen === 1 };
  if (step === 'courtesy-ask') return { kind: 'ask', step, count: Number(chosen) };
  const tiles = typeof chosen === 'number' ? [] : chosen;
  const blind = step === 'courtesy-pass' ? 0 : PASS_SIZE - tiles.length;
  return { kind: 'pass', step, tiles, blind };
}

/** What was chosen, most frequent first and without names; a choice of a stand-in counts for no player. */
function countsOf(reached: readonly Resolved[]): GuidedDeal['chosen'] {
  const alike = new Map<string, { choice: AnswerChoice; players: number }>();
  for (const at of reached) {
    const choice = choiceAt(seatStep(at, PLAYER), PLAYER);
    if (choice === null) continue;
    const own = Number(at.by[PLAYER] === 'player');
    const key = JSON.stringify(choice);
    alike.set(key, { choice, players: (alike.get(key)?.players ?? 0) + own });
  }
  return [...alike]
    .sort(([a, one], [b, other]) => other.players - one.players || (a < b ? -1 : 1))
    .map(([, it]) => it);
}
