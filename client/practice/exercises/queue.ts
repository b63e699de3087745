// Which exercises are for today: those that are due, then those that were never asked.
import type { ExerciseRef, Schedule, StepKind } from '../../../shared-engine/index.ts';

/** As many as fit into ten minutes. */
export const TODAY = 10;

export interface Due {
  readonly exercise: ExerciseRef;
  /** Null for one that was never asked. */
  readonly schedule: Schedule | null;
}

export interface Queue {
  readonly today: readonly Due[];
  /** When the next one after today's comes back; null where none will. */
  readonly nextDue: number | null;
}

interface Asked {
  readonly exercises: readonly ExerciseRef[];
  readonly schedules: readonly Schedule[];
  /** The kind of step that costs most; null where that cannot be said. */
  readonly dearest: StepKind | null;
}

/**
 * The longest due first, then of those never asked the kind that costs most, the latest first; what was asked today does
 * not come again today.
 */
export function queueAt({ exercises, schedules, dearest }: Asked, endOfDay: number): Queue {
  const byId = new Map(schedules.map((schedule) => [schedule.id, schedule]));
  const all = exercises.map((exercise): Due => ({ exercise, schedule: byId.get(exercise.id) ?? null }));
  const due = all
    .filter(({ schedule }) => schedule !== null && schedule.due < endOfDay)
    .sort((a, b) => a.schedule!.due - b.schedule!.due);
  const fresh = all
    .filter(({ schedule }) => schedule === null)
    .sort(
      (a, b) =>
        Number(isOf(b, dearest)) - Number(isOf(a, dearest)) || b.exercise.playedAt - a.exercise.playedAt,
    );
  const later = all.flatMap(({ schedule }) => (schedule && schedule.due >= endOfDay ? [schedule.due] : []));
  return {
    today: [...due, ...fresh].slice(0, TODAY),
    nextDue: later.length > 0 ? later.reduce((first, time) => Math.min(first, time)) : null,
  };
}

function isOf({ exercise }: Due, kind: StepKind | null): boolean {
  return kind !== null && exercise.kinds.includes(kind);
}

/** Midnight after this time, by the clock of the device. */
export function endOfDay(time: number): number {
  return new Date(time).setHours(24, 0, 0, 0);
}
