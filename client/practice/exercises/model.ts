// The exercises of today one after the other: what is asked, how the answer is judged, and when it comes back.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type AnswerChoice,
  type ChoiceReview,
  type CompiledCard,
  choiceVerdict,
  compileCard,
  createSwarKernel,
  dearestStep,
  decisionsIn,
  type Exercise,
  exerciseAt,
  exercisesOf,
  gradeOf,
  habitsOf,
  type Review,
  recordWithAnswer,
  reviewRound,
  type Schedule,
  unpackPlay,
  withDeepAnalysis,
} from '../../../shared-engine/index.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { listRounds, listSchedules, readRound, storeSchedule } from '../../storage/history/rounds.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { type Due, endOfDay, queueAt } from './queue.ts';
import { nextSchedule } from './scheduler.ts';

/** The parts of the answer: how many blind and which tiles are two. */
export interface JudgedAnswer {
  readonly review: Review;
  readonly places: readonly number[];
  /** Null until every part has been played on. */
  readonly schedule: Schedule | null;
}

export type ExercisesState =
  | { readonly is: 'opening' }
  | { readonly is: 'none'; readonly nextDue: number | null; readonly problem: StorageProblem | null }
  | {
      readonly is: 'asking';
      readonly due: Due;
      readonly left: number;
      /** Null where the round or its card is gone. */
      readonly exercise: Exercise | null;
      readonly answer: JudgedAnswer | null;
    };

export interface ExercisesModel {
  readonly state: ReadonlySignal<ExercisesState>;
  open(): Promise<void>;
  answer(choice: AnswerChoice): void;
  next(): Promise<void>;
  stop(): void;
}

export interface ExercisesPorts {
  readonly now: () => number;
  readonly startDeepAnalysis: StartDeepAnalysis;
}

export function exercisesModel({ now, startDeepAnalysis }: ExercisesPorts): ExercisesModel {
  const state = signal<ExercisesState>({ is: 'opening' });
  let queue: readonly Due[] = [];
  let nextDue: number | null = null;
  let card: CompiledCard | null = null;
  let cancel = () => {};

  async function ask(): Promise<void> {
    const [due] = queue;
    if (due === undefined) {
      state.value = { is: 'none', nextDue, problem: null };
      return;
    }
    const found = await exerciseFor(due);
    card = found?.card ?? null;
    const exercise = found?.exercise ?? null;
    state.value = { is: 'asking', due, left: queue.length, exercise, answer: null };
  }

  function judged(places: readonly number[], review: Review): void {
    const current = state.value;
    if (current.is !== 'asking') return;
    const parts = places.map((place) => review.choices[place]!);
    const isDone = parts.every(({ analysis }) => analysis.depth === 'deep');
    const schedule = isDone ? scheduled(current.due, parts) : null;
    state.value = { ...current, answer: { review, places, schedule } };
  }

  function scheduled({ exercise, schedule }: Due, parts: readonly ChoiceReview[]): Schedule {
    const next = nextSchedule(exercise.id, schedule, gradeOf(parts.map(choiceVerdict)), now());
    nextDue = nextDue === null ? next.due : Math.min(nextDue, next.due);
    void storeSchedule(next);
    return next;
  }

  return {
    state,
    async open() {
      const [rounds, schedules] = await Promise.all([listRounds(), listSchedules()]);
      if (!rounds.ok || !schedules.ok) {
        const problem = rounds.ok ? (schedules.ok ? null : schedules.problem) : rounds.problem;
        state.value = { is: 'none', nextDue: null, problem };
        return;
      }
      const asked = {
        exercises: exercisesOf(rounds.value),
        schedules: schedules.value,
        dearest: dearestStep(habitsOf(rounds.value)),
      };
      const planned = queueAt(asked, endOfDay(now()));
      queue = planned.today;
      nextDue = planned.nextDue;
      await ask();
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
      if (current.is === 'asking' && current.answer?.schedule === null) {
        const { review, places } = current.answer;
        scheduled(
          current.due,
          places.map((place) => review.choices[place]!),
        );
      }
      queue = queue.slice(1);
      await ask();
    },
    stop: () => cancel(),
  };
}

async function exerciseFor({
  exercise: { round, step },
}: Due): Promise<{ readonly exercise: Exercise; readonly card: CompiledCard } | null> {
  const read = await readRound(round);
  if (!read.ok || !read.value?.card) return null;
  const play = unpackPlay(read.value.round.detail.play);
  const exercise = play && exerciseAt(play.record, step);
  return exercise && { exercise, card: compileCard(read.value.card.file) };
}
