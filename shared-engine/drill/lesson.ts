// A lesson to play along: a drill whose teacher has said what to choose; its deals go on from the teacher's choices.
import { usesRollouts } from '../bots/index.ts';
import { type CardFile, type CompiledCard, compileCard, houseCard } from '../card/index.ts';
import { createSwarKernel, type Kernel } from '../kernels/index.ts';
import {
  type AnswerChoice,
  begin,
  evolve,
  type Face,
  type PreparedDeal,
  type RoundEvent,
  type Seat,
  type SeatView,
  STEPS,
  type Step,
  seatView,
  stepOf,
} from '../rules/index.ts';
import { type DrillFile, readDrillFile } from './file.ts';
import { type Drill, type DrillDeal, drillTerms } from './format.ts';
import { type GuidedRound, playGuidedDeal } from './guided.ts';
import { arrivalProblems, gapProblem, notALesson, teacherChoice, unplayable } from './lesson-problem.ts';
import { plainRack, prepareDeal } from './prepare.ts';
import { type DrillProblem, placeOf } from './problem.ts';
import { dealScript } from './scripted.ts';

/** A step at which whoever plays along chooses, and then compares. */
export interface LessonMoment {
  readonly step: Step;
  /** Of the seat before it chooses, where the teacher's own choices have led. */
  readonly view: SeatView;
  /** Null where the teacher left words alone, which only the last moment may. */
  readonly teacher: AnswerChoice | null;
  readonly words: string | null;
  /** What the pass before it brought; null where it brought nothing. */
  readonly arrived: { readonly tiles: readonly Face[]; readonly isScripted: boolean } | null;
}

export interface LessonDeal {
  readonly id: string;
  readonly title: string | null;
  readonly task: string | null;
  /** Whether whoever plays along is East, with 14 tiles. */
  readonly isEast: boolean;
  readonly moments: readonly LessonMoment[];
}

export interface Lesson {
  readonly title: string;
  readonly card: CompiledCard;
  readonly deals: readonly LessonDeal[];
}

interface Rejected {
  readonly ok: false;
  readonly problems: readonly DrillProblem[];
}

export type ReadLesson = { readonly ok: true; readonly lesson: Lesson; readonly file: DrillFile } | Rejected;

/** Reads the text of a lesson, which is a drill file; never throws (rule T1). */
export function readLesson(text: string): ReadLesson {
  const read = readDrillFile(text, createSwarKernel(houseCard()));
  if (!read.ok) return read;
  const file = lessonFile(read.file);
  const { drill } = file;
  if (drill.form === 'tables') return rejected(notALesson(null, 'four-players'));
  if (drill.bots.styles.some(usesRollouts)) return rejected(notALesson(null, 'slow-bots'));

  const card = compiled(file.card);
  const kernel = createSwarKernel(card);
  const played = drill.deals.map((deal) => playedDeal(drill, deal, kernel));
  const problems = played.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) return { ok: false, problems };
  const deals = played.flatMap((one) => (one.ok ? [one.deal] : []));
  return { ok: true, lesson: { title: drill.title, card, deals }, file };
}

/** What of a drill a lesson takes along: its card, and neither what is the teacher's alone nor what is a class's. */
export function lessonFile({ drill, card = 'house' }: DrillFile): DrillFile {
  return { drill: { ...drill, deals: drill.deals.map(({ note: _, ...deal }) => deal) }, card };
}

/** A lesson as short as its file can be, to be packed into a link. */
export function lessonText(file: DrillFile): string {
  const { drill, ...beside } = lessonFile(file);
  return JSON.stringify({ ...drill, ...beside });
}

function compiled(card: CardFile | 'house' | undefined): CompiledCard {
  return card === undefined || card === 'house' ? houseCard() : compileCard(card);
}

type Played = { readonly ok: true; readonly deal: LessonDeal } | Rejected;

/** The choices of the teacher, played from the deal on (rule T2). */
function playedDeal(drill: Drill, deal: DrillDeal, kernel: Kernel): Played {
  const place = placeOf(deal, drill.deals);
  const { comments = {} } = deal;
  const written = STEPS.filter((step) => Object.keys(comments[step] ?? {}).length > 0);
  if (written.length === 0) return rejected(notALesson(place, 'no-words'));
  if (deal.tiles.kind === 'sampled') return rejected(notALesson(place, 'drawn'));
  const prepared = prepareDeal(drill, deal, kernel);
  if (!prepared.ok) return rejected(prepared.problem);

  const { choices, play } = teacherOf(drill, deal, prepared.deal, kernel);
  const whole = play(choices.length);
  if (!whole.ok) return { ok: false, problems: unplayable(place, deal, choices, play) };

  const next = stepOf(whole.round);
  const wordsAlone = written.filter((step) => comments[step]?.chosen === undefined);
  const stray = wordsAlone.find((step) => step !== next);
  if (stray !== undefined) return rejected(gapProblem(place, stray, next));
  const problems = arrivalProblems(place, deal, seatView(whole.round, deal.seat).record);
  if (problems.length > 0) return { ok: false, problems };
  const moments = momentsOf(whole, deal).filter(({ teacher, words }) => teacher !== null || words !== null);
  return { ok: true, deal: lessonDeal(deal, moments) };
}

/** What the teacher chose, step by step, and the round after the first `count` of these choices. */
function teacherOf(
  drill: Pick<Drill, 'bots' | 'ways'>,
  deal: DrillDeal,
  dealt: PreparedDeal,
  kernel: Kernel,
) {
  const terms = drillTerms(drill);
  const start = { deal: dealt, seat: deal.seat, bots: drill.bots, terms, script: dealScript(deal) };
  const choices = STEPS.flatMap((step) => teacherChoice(step, deal.comments?.[step]?.chosen, terms) ?? []);
  const play = (count: number) => playGuidedDeal(start, choices.slice(0, count), kernel);
  return { choices, play };
}

/** A deal of a lesson that is still being written. */
export interface LessonSoFar {
  /** As far as the choices made lead, the step that waits for a choice last. */
  readonly moments: readonly LessonMoment[];
  /** Why a step is not among the moments, from its fault on. */
  whyNot(step: Step): string;
}

/** Null where nobody can know it before it is dealt, or where a bot takes too long to choose. */
export function lessonSoFar(
  drill: Pick<Drill, 'bots' | 'ways'>,
  deal: DrillDeal,
  kernel: Kernel,
): LessonSoFar | null {
  if (plainRack(drill, deal) === null || drill.bots.styles.some(usesRollouts)) return null;
  const prepared = prepareDeal(drill, deal, kernel);
  if (!prepared.ok) return null;
  const place = placeOf(deal);
  const { choices, play } = teacherOf(drill, deal, prepared.deal, kernel);
  for (let count = choices.length; count >= 0; count--) {
    const played = play(count);
    if (!played.ok) continue;
    const faults = count < choices.length ? unplayable(place, deal, choices, play) : [];
    return {
      moments: momentsOf(played, deal),
      whyNot: (step) => (faults[0] ?? gapProblem(place, step, stepOf(played.round))).text,
    };
  }
  return null;
}

function rejected(problem: DrillProblem): Rejected {
  return { ok: false, problems: [problem] };
}

function lessonDeal(deal: DrillDeal, moments: readonly LessonMoment[]): LessonDeal {
  const { id, title = null, task = null, seat, dealer } = deal;
  return { id, title, task, isEast: seat === dealer, moments };
}

/** One before each choice of the seat, and one where the next choice is awaited. */
function momentsOf({ events, round: last }: GuidedRound, deal: DrillDeal): LessonMoment[] {
  const [dealt, ...others] = events;
  if (dealt?.kind !== 'dealt') return [];
  const moments: LessonMoment[] = [];
  let round = begin(dealt);
  for (const event of others) {
    const teacher = choiceOf(event, deal.seat);
    if (teacher !== null) moments.push(momentAt(seatView(round, deal.seat), teacher, deal));
    round = evolve(round, event);
  }
  if (stepOf(last) !== null) moments.push(momentAt(seatView(last, deal.seat), null, deal));
  return moments;
}

function momentAt(view: SeatView, teacher: AnswerChoice | null, deal: DrillDeal): LessonMoment {
  const step = stepOf(view.stage)!;
  const before = view.record.steps.at(-1);
  const came = before?.kind === 'move' && before.received.length > 0 ? before : null;
  return {
    step,
    view,
    teacher,
    words: deal.comments?.[step]?.words ?? null,
    arrived: came && {
      tiles: came.received,
      isScripted: deal.scripted?.arrivals[came.step] !== undefined,
    },
  };
}

/** What this seat chose with the event; null for any other event. */
function choiceOf(event: RoundEvent, seat: Seat): AnswerChoice | null {
  if (!('seat' in event) || event.seat !== seat) return null;
  switch (event.kind) {
    case 'submitted':
      return { kind: 'pass', step: event.step, tiles: event.pass.tiles, blind: event.pass.blind };
    case 'voted':
      return { kind: 'vote', step: 'vote', go: event.go };
    case 'asked':
      return { kind: 'ask', step: 'courtesy-ask', count: event.count };
    case 'withdrawn':
      return null;
  }
}
