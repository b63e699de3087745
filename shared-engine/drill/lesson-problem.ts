// Why a drill is no lesson, or a deal of it cannot be played as its teacher says: named by deal and step.
import { tileName } from '../analysis/index.ts';
import {
  type AnswerChoice,
  bagOf,
  countOf,
  type Face,
  mayPassBlind,
  PASS_SIZE,
  type SeatRecord,
  STEPS,
  type Step,
  seatView,
  stepOf,
  type Terms,
} from '../rules/index.ts';
import type { DrillDeal } from './format.ts';
import type { GuidedRound, playGuidedDeal } from './guided.ts';
import { type DealPlace, type DrillProblem, drillProblem } from './problem.ts';

const NOT_A_LESSON = {
  'four-players':
    'it is for four players at a table, but a lesson is played alone; let everybody play alone.',
  'slow-bots':
    'one of its bots plays each pass out on many deals, which takes too long here; choose other bots.',
  'no-words': 'nothing is said of it; write what you would choose at its first step, or remove the deal.',
  drawn: 'its rack is drawn to fit a description; pick the tiles that your words are about by hand.',
} as const;

export function notALesson(place: DealPlace | null, why: keyof typeof NOT_A_LESSON): DrillProblem {
  return drillProblem('not-a-lesson', place, NOT_A_LESSON[why]);
}

type Chosen = NonNullable<NonNullable<DrillDeal['comments']>[Step]>['chosen'];

/** What the teacher chose at a step; fewer tiles than the pass needs leave the others blind, where that may be. */
export function teacherChoice(step: Step, chosen: Chosen, terms: Terms): AnswerChoice | null {
  if (chosen === undefined) return null;
  if (step === 'vote') return { kind: 'vote', step, go: chosen === 1 };
  if (step === 'courtesy-ask') return { kind: 'ask', step, count: Number(chosen) };
  const tiles = typeof chosen === 'number' ? [] : chosen;
  const blind = mayPassBlind(step, terms) ? PASS_SIZE - tiles.length : 0;
  return { kind: 'pass', step, tiles, blind };
}

/** The first choice that cannot be made, and why; a tile that did not arrive before it is the likelier reason. */
export function unplayable(
  place: DealPlace,
  deal: DrillDeal,
  choices: readonly AnswerChoice[],
  play: (count: number) => ReturnType<typeof playGuidedDeal>,
): DrillProblem[] {
  let before: GuidedRound | null = null;
  for (const [nth, choice] of choices.entries()) {
    const played = play(nth);
    if (played.ok) before = played;
    const after = play(nth + 1);
    if (after.ok) continue;
    const missing = before ? arrivalProblems(place, deal, seatView(before.round, deal.seat).record) : [];
    if (missing.length > 0) return missing;
    const open = before && stepOf(before.round);
    if (open !== choice.step) return [gapProblem(place, choice.step, open)];
    const words = `at ${stepWords(choice.step)} what you choose cannot be done. ${after.message}`;
    return [drillProblem('impossible-choice', place, words)];
  }
  return [];
}

/** Something is said at a step that the exchange has not come to with the teacher's choices; `open` is where it waits. */
export function gapProblem(place: DealPlace, said: Step, open: Step | null): DrillProblem {
  const words =
    open !== null && STEPS.indexOf(open) < STEPS.indexOf(said)
      ? `at ${stepWords(open)} say what you would choose; the lesson goes on from it to ${stepWords(said)}.`
      : `with your choices the exchange does not come to ${stepWords(said)}; remove what you wrote there.`;
  return drillProblem('impossible-choice', place, words);
}

/** Scripted tiles that did not come: the set has no more of them, or their bot had passed them on (rule T3). */
export function arrivalProblems(place: DealPlace, deal: DrillDeal, record: SeatRecord): DrillProblem[] {
  return record.steps.flatMap((step) => {
    const scripted = step.kind === 'move' ? (deal.scripted?.arrivals[step.step] ?? []) : [];
    if (step.kind !== 'move' || scripted.length === 0) return [];
    const missing = missingFrom(step.received, scripted);
    if (missing.length === 0) return [];
    const words = `at ${stepWords(step.step)} ${tileName(missing[0]!)} cannot arrive as you set it: the set has no more of it, or fewer tiles come; set another tile.`;
    return [drillProblem('impossible-arrival', place, words)];
  });
}

function missingFrom(came: readonly Face[], scripted: readonly Face[]): Face[] {
  const [have, want] = [bagOf(came), bagOf(scripted)];
  return scripted.filter((face) => countOf(have, face) < countOf(want, face));
}

/** The step in the middle of a sentence. */
function stepWords(step: Step): string {
  switch (step) {
    case 'vote':
      return 'the vote';
    case 'courtesy-ask':
      return 'the courtesy';
    default:
      return step.replace('-', ' ');
  }
}
