// When an exercise comes back, against the test vectors that the scheduling algorithm FSRS-6 is published with.
import { expect, test } from 'vitest';
import { nextSchedule } from '../../client/practice/exercises/scheduler.ts';
import type { Grade, Schedule } from '../../shared-engine/practice/exercise.ts';

const DAY = 86_400_000;
const START = Date.UTC(2022, 11, 29, 12, 30);

/** The schedules after these grades, each so many days after the one before. */
function schedules(grades: readonly Grade[], days: readonly number[]): readonly Schedule[] {
  let now = START;
  let schedule: Schedule | null = null;
  return grades.map((grade, nth) => {
    now += days[nth]! * DAY;
    schedule = nextSchedule('x', schedule, grade, now);
    return schedule;
  });
}

test('six answers lead to the stability and difficulty that the reference implementation tests', () => {
  // github.com/open-spaced-repetition/ts-fsrs, packages/fsrs/__tests__/FSRS-6.test.ts, "memory state[long-term]", which
  // takes its values from fsrs-rs, src/inference.rs: the default parameters, no steps within a day.
  const grades = ['again', 'good', 'good', 'good', 'good', 'good'] as const;
  const last = schedules(grades, [0, 0, 1, 3, 8, 21]).at(-1)!;
  expect(last.stability).toBeCloseTo(53.335106, 4);
  expect(last.difficulty).toBeCloseTo(6.3574867, 4);
  expect(last).toMatchObject({ reps: 6, lapses: 0 });
});

test('the first answer of each grade leads to the published first stability and difficulty', () => {
  // The same file, "first repeat": again, hard, good, easy.
  const firsts = (['again', 'hard', 'good', 'easy'] as const).map((grade) => schedules([grade], [0])[0]!);
  expect(firsts.map(({ stability }) => stability)).toEqual([0.212, 1.2931, 2.3065, 8.2956]);
  expect(firsts.map(({ difficulty }) => difficulty)).toEqual([6.4133, 5.11217071, 2.11810397, 1]);
  const days = firsts.map(({ due }) => (due - START) / DAY);
  expect(days).toEqual(days.toSorted((a, b) => a - b));
  expect(days[0]).toBeGreaterThanOrEqual(1);
});

test('a clock that was set back takes no exercise back in time', () => {
  const first = nextSchedule('x', null, 'good', START);
  const back = nextSchedule('x', first, 'good', START - 400 * DAY);
  expect(back.lastReview).toBe(START);
  expect(back.due).toBeGreaterThan(START);
});
