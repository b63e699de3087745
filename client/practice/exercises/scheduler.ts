// When an exercise comes back: the published FSRS algorithm in its kept library, graded by what the answer cost.
import { type Card, createEmptyCard, fsrs, Rating, State } from 'ts-fsrs';
import type { Grade, Schedule } from '../../../shared-engine/index.ts';

/** Whole days, and the same for everybody: nothing is asked twice on a day, and no chance moves a date. */
const scheduler = fsrs({ enable_short_term: false, enable_fuzz: false, maximum_interval: 365 });

const RATINGS = { again: Rating.Again, hard: Rating.Hard, good: Rating.Good, easy: Rating.Easy } as const;

/** After an answer at `now`, in milliseconds since 1970; `before` is null for the first one. */
export function nextSchedule(id: string, before: Schedule | null, grade: Grade, now: number): Schedule {
  // A clock that was set back must not take the exercise back in time.
  const at = Math.max(now, before?.lastReview ?? 0);
  const { card } = scheduler.next(before ? cardOf(before) : createEmptyCard(at), at, RATINGS[grade]);
  return {
    id,
    due: card.due.getTime(),
    lastReview: at,
    stability: card.stability,
    difficulty: card.difficulty,
    scheduledDays: card.scheduled_days,
    reps: card.reps,
    lapses: card.lapses,
  };
}

function cardOf({ due, lastReview, stability, difficulty, ...rest }: Schedule): Card {
  return {
    due: new Date(due),
    last_review: new Date(lastReview),
    stability,
    difficulty,
    scheduled_days: rest.scheduledDays,
    elapsed_days: 0,
    learning_steps: 0,
    reps: rest.reps,
    lapses: rest.lapses,
    state: State.Review,
  };
}
