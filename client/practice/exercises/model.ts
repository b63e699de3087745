// The questions of today one after the other: own choices that are due, then drawn deals; how each answer is judged.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type AnswerChoice,
  type ChoiceReview,
  type CompiledCard,
  canBeDrawn,
  choiceVerdict,
  createSwarKernel,
  dearestStep,
  decisionsIn,
  type Exercise,
  exerciseAt,
  exercisesOf,
  gradeOf,
  habitsOf,
  type MistakeCategory,
  type Review,
  recordWithAnswer,
  reviewRound,
  type Schedule,
  withDeepAnalysis,
} from '../../../shared-engine/index.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { listRounds, listSchedules, storeSchedule } from '../../storage/history/rounds.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import type { DealDrawer, DrawerRequest } from '../../workers/drawn-deals.ts';
import { exerciseFor } from './exercise-for.ts';
import { type Due, endOfDay, queueAt, TODAY } from './queue.ts';
import { nextSchedule } from './scheduler.ts';

/** The parts of the answer: how many blind and which tiles are two. */
export interface JudgedAnswer {
  readonly review: Review;
  readonly places: readonly number[];
  readonly isDone: boolean;
  /** When it comes back; null until every part has been played on, and for a drawn deal. */
  readonly schedule: Schedule | null;
}

/** Where a question comes from. */
export type Source =
  | { readonly from: 'own'; readonly due: Due }
  /** `kind` is the mistake that it was drawn for, null by chance; `wished` the one that was asked for. */
  | {
      readonly from: 'drawn';
      readonly kind: MistakeCategory | null;
      readonly wished: MistakeCategory | null;
    };

export type ExercisesState =
  | { readonly is: 'opening' }
  | { readonly is: 'drawing'; readonly wished: MistakeCategory | null; readonly tried: number }
  /** Over for today. */
  | {
      readonly is: 'none';
      readonly nextDue: number | null;
      readonly problem: StorageProblem | null;
      /** Whether deals were to be drawn and could not be. */
      readonly isCutShort: boolean;
    }
  | {
      readonly is: 'asking';
      /** From 1, over the day. */
      readonly nth: number;
      readonly source: Source;
      readonly left: number;
      /** Null where the round or its card is gone. */
      readonly exercise: Exercise | null;
      readonly answer: JudgedAnswer | null;
    };

export interface ExercisesModel {
  readonly state: ReadonlySignal<ExercisesState>;
  open(): Promise<void>;
  /** Rounds have been judged that were not before: their choices come before deals that are still to be drawn. */
  refresh(): Promise<void>;
  answer(choice: AnswerChoice): void;
  next(): Promise<void>;
  stop(): void;
}

export interface ExercisesPorts {
  readonly now: () => number;
  readonly startDeepAnalysis: StartDeepAnalysis;
  /** The card of the deals that are drawn. */
  readonly card: CompiledCard;
  readonly openDrawer: (request: Pick<DrawerRequest, 'wish' | 'most' | 'onTried'>) => DealDrawer;
}

export function exercisesModel({ now, startDeepAnalysis, ...ports }: ExercisesPorts): ExercisesModel {
  const state = signal<ExercisesState>({ is: 'opening' });
  const asked = new Set<string>();
  let count = 0;
  let queue: readonly Due[] = [];
  let nextDue: number | null = null;
  let wished: MistakeCategory | null = null;
  let drawer: DealDrawer | null = null;
  let hasFailed = false;
  let card: CompiledCard | null = null;
  let cancel = () => {};

  async function read(): Promise<StorageProblem | null> {
    const [rounds, schedules] = await Promise.all([listRounds(), listSchedules()]);
    if (!rounds.ok) return rounds.problem;
    if (!schedules.ok) return schedules.problem;
    const habits = habitsOf(rounds.value);
    const known = {
      exercises: exercisesOf(rounds.value),
      schedules: schedules.value,
      dearest: dearestStep(habits),
    };
    const planned = queueAt(known, endOfDay(now()));
    queue = planned.today.filter(({ exercise }) => !asked.has(exercise.id)).slice(0, TODAY - count);
    nextDue = planned.nextDue;
    const [first] = habits.named;
    wished ??= (habits.named.find(({ kind }) => canBeDrawn(kind, false)) ?? first)?.kind ?? null;
    return null;
  }

  async function ask(): Promise<void> {
    const [due] = queue;
    if (due !== undefined) {
      queue = queue.slice(1);
      asked.add(due.exercise.id);
      const found = await exerciseFor(due);
      return show({ from: 'own', due }, found);
    }
    if (count < TODAY && !hasFailed) return draw();
    state.value = { is: 'none', nextDue, problem: null, isCutShort: hasFailed };
  }

  function show(source: Source, found: { readonly exercise: Exercise; readonly card: CompiledCard } | null) {
    count++;
    card = found?.card ?? null;
    const left = hasFailed ? queue.length + 1 : TODAY - count + 1;
    state.value = { is: 'asking', nth: count, source, left, exercise: found?.exercise ?? null, answer: null };
  }

  async function draw(): Promise<void> {
    if (state.value.is === 'drawing') return;
    state.value = { is: 'drawing', wished, tried: 0 };
    openDrawer();
    const deal = await drawer!.next();
    if (state.value.is !== 'drawing') return;
    const exercise = deal && exerciseAt(deal.record, deal.step);
    if (deal === null || exercise === null) {
      // Without a worker nothing is drawn; what is due has been asked.
      hasFailed = true;
      return ask();
    }
    show({ from: 'drawn', kind: deal.kind, wished }, { exercise, card: ports.card });
  }

  /** As soon as it is known what to draw for: one deal is to be ready when the last own choice is answered. */
  function openDrawer(): void {
    drawer ??= ports.openDrawer({
      wish: { kind: wished, firstPass: false },
      most: TODAY,
      onTried(tried) {
        if (state.value.is === 'drawing') state.value = { ...state.value, tried };
      },
    });
  }

  function judged(places: readonly number[], review: Review): void {
    const current = state.value;
    if (current.is !== 'asking') return;
    const parts = places.map((place) => review.choices[place]!);
    const isDone = parts.every(({ analysis }) => analysis.depth === 'deep');
    const schedule = isDone ? scheduled(current.source, parts) : null;
    state.value = { ...current, answer: { review, places, isDone, schedule } };
  }

  /** A drawn deal is never asked again, so that nothing is stored of it. */
  function scheduled(source: Source, parts: readonly ChoiceReview[]): Schedule | null {
    if (source.from === 'drawn') return null;
    const { exercise, schedule } = source.due;
    const next = nextSchedule(exercise.id, schedule, gradeOf(parts.map(choiceVerdict)), now());
    nextDue = nextDue === null ? next.due : Math.min(nextDue, next.due);
    void storeSchedule(next);
    return next;
  }

  return {
    state,
    async open() {
      const problem = await read();
      if (problem !== null) {
        state.value = { is: 'none', nextDue: null, problem, isCutShort: false };
        return;
      }
      if (queue.length < TODAY) openDrawer();
      await ask();
    },
    async refresh() {
      const problem = await read();
      const { is } = state.peek();
      if (problem === null && queue.length > 0 && (is === 'drawing' || is === 'none')) await ask();
    },
    answer(choice) {
      const current = state.value;
      if (current.is !== 'asking' || current.answer !== null) return;
      if (current.exercise === null || card === null) return;
      const { record } = current.exercise;
      const answered = recordWithAnswer(record, choice, 'player');
      let review = reviewRound(answered, createSwarKernel(card));
      const places = [...review.choices.keys()].slice(decisionsIn(record).length);
      judged(places, review);
      cancel = startDeepAnalysis(
        { record: answered, card, choices: places },
        {
          onChoice({ nth, analysis }) {
            review = withDeepAnalysis(review, nth, analysis);
            judged(places, review);
          },
        },
      );
    },
    async next() {
      const current = state.value;
      cancel();
      // Whoever does not wait is graded by the first answer.
      if (current.is === 'asking' && current.answer?.isDone === false) {
        const { review, places } = current.answer;
        scheduled(
          current.source,
          places.map((place) => review.choices[place]!),
        );
      }
      await ask();
    },
    stop() {
      cancel();
      drawer?.stop();
    },
  };
}
