// One's own choices again: each that cost clearly becomes an exercise with the same rack and what was known then.
import { z } from 'zod';
import { finalRack, type Verdict } from '../analysis/index.ts';
import {
  type Face,
  facesOf,
  MOVES,
  PASS_SIZE,
  type PendingDecision,
  type SeatRecord,
  type SeatStep,
  type Step,
  stepOfOutcome,
} from '../rules/index.ts';
import { type StepKind, stepKind } from './habits.ts';
import type { RoundSummary } from './stored-round.ts';

/** How an answer is graded, by what it cost and not by the person. */
export const GRADES = ['again', 'hard', 'good', 'easy'] as const;
export type Grade = (typeof GRADES)[number];

/** When an exercise comes back; times in milliseconds since 1970. The rest is the scheduler's memory of it. */
export const scheduleSchema = z.strictObject({
  /** Id of the round, a slash, the step. */
  id: z.string().regex(/^[0-9a-f]{32}\/[a-z-]+$/),
  due: z.number().min(0).max(8.64e15),
  lastReview: z.number().min(0).max(8.64e15),
  stability: z.number().min(0).max(100_000),
  difficulty: z.number().min(0).max(10),
  scheduledDays: z.number().min(0).max(40_000),
  reps: z.int().min(0),
  lapses: z.int().min(0),
});
export type Schedule = z.infer<typeof scheduleSchema>;

export interface ExerciseRef {
  readonly id: string;
  readonly round: string;
  readonly step: Step;
  readonly playedAt: number;
  /** Of its choices that cost clearly: how many blind, which tiles, or both. */
  readonly kinds: readonly StepKind[];
}

/** The choices of these rounds that cost clearly; how many blind and which tiles of one pass are one exercise. */
export function exercisesOf(rounds: readonly RoundSummary[]): readonly ExerciseRef[] {
  return rounds.flatMap(({ id, playedAt, choices }) => {
    const costly = choices.filter(({ verdict, by }) => verdict === 'costly' && by === 'player');
    return [...new Set(costly.map(({ step }) => step))].map((step) => ({
      id: `${id}/${step}`,
      round: id,
      step,
      playedAt,
      kinds: costly.filter((choice) => choice.step === step).map(stepKind),
    }));
  });
}

export interface Exercise {
  /** The steps that were over when the choice was offered. */
  readonly record: SeatRecord;
  readonly rack: readonly Face[];
  readonly decision: PendingDecision;
}

/** Null where the record has no such step. */
export function exerciseAt(record: SeatRecord, step: Step): Exercise | null {
  const place = record.steps.findIndex((went) => stepOfOutcome(went) === step);
  const went = record.steps[place];
  if (went === undefined) return null;
  const { actualSteps, ...rest } = record;
  const before: SeatRecord = {
    ...rest,
    steps: record.steps.slice(0, place),
    ...(actualSteps && { actualSteps: actualSteps.slice(0, place) }),
  };
  return { record: before, rack: facesOf(finalRack(before)), decision: decisionOf(went, record) };
}

/** Of two schedules of one exercise, on two devices, that of the later answer. */
export function laterSchedule(one: Schedule, other: Schedule): Schedule {
  return other.lastReview > one.lastReview ? other : one;
}

/** By the verdict, which follows from what the answer costs; of two parts of an answer the dearer one counts. */
export function gradeOf(verdicts: readonly Verdict[]): Grade {
  const grades = verdicts.map((verdict) => GRADES.indexOf(BY_VERDICT[verdict]));
  return GRADES[Math.min(...grades, GRADES.length - 1)]!;
}

const BY_VERDICT: Readonly<Record<Verdict, Grade>> = {
  costly: 'again',
  'a-little-worse': 'hard',
  'cant-say': 'good',
  'just-as-good': 'good',
  best: 'easy',
};

function decisionOf(went: SeatStep, { seat, terms }: SeatRecord): PendingDecision {
  switch (went.kind) {
    case 'vote':
      return { kind: 'vote', step: 'vote' };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask' };
    case 'move': {
      const { step, gave, blind } = went;
      const count = step === 'courtesy-pass' ? gave.length + blind[seat] : PASS_SIZE;
      return { kind: 'pass', step, count, blindAllowed: MOVES[step].blind && terms.blindPasses };
    }
  }
}
