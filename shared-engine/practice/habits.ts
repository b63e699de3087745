// What keeps costing somebody: the cost of their own choices over many rounds, by kind of step and by kind of mistake.
import { MISTAKE_CATEGORIES, MISTAKE_CATEGORY_NAMES, type MistakeCategory } from '../analysis/index.ts';
import { isMistakeIn } from './mistake-counts.ts';
import { type NamedHabit, namedHabits } from './named-habits.ts';
import { type GroupMean, partialPooling } from './pooling.ts';
import { isUnaided, type RoundSummary, type StoredChoice } from './stored-round.ts';

export const STEP_KINDS = ['right', 'across', 'left', 'vote', 'blind', 'courtesy'] as const;
export type StepKind = (typeof STEP_KINDS)[number];

/** Below so many cases nothing is said of a kind. */
export const LEAST_CASES = 8;

/** What one kind costs, in wins of 100 games. */
export interface HabitRow<Kind extends string> {
  readonly kind: Kind;
  /** Choices of this kind of step, or mistakes of this kind. */
  readonly cases: number;
  /** Cost a round, with half the width of its 95 % interval; drawn towards the mean of all kinds. */
  readonly perRound: number;
  readonly halfWidth: number;
  /** Whether there are cases enough to say anything. */
  readonly isSaid: boolean;
}

export interface Habits {
  /** Rounds that have been judged to the end. */
  readonly rounds: number;
  /** Mean cost of all own choices of a round, and half the width of its 95 % interval. */
  readonly perRound: number;
  readonly halfWidth: number;
  /** Dearest first. */
  readonly steps: readonly HabitRow<StepKind>[];
  readonly mistakes: readonly HabitRow<MistakeCategory>[];
  /** Kinds of mistake that are clearly more frequent than with a club player, dearest first. */
  readonly named: readonly Habit[];
  /** Choices that the coach helped with, which are in none of the sums above. */
  readonly helped: CasesCost;
  /** All other passes, which the coach may be asked about as well. */
  readonly unaidedPasses: CasesCost;
}

/** A habit with what it was told to cost a round, in wins of 100 games. */
export type Habit = NamedHabit & Pick<HabitRow<MistakeCategory>, 'perRound'>;

/** What costs less a round is not worth naming. */
const WORTH_NAMING = 0.05;

/** What some choices cost each, in wins of 100 games. */
export interface CasesCost {
  readonly cases: number;
  readonly perCase: number;
}

/** Of choices made without help; those with it are counted apart. */
export function habitsOf(all: readonly Pick<RoundSummary, 'choices' | 'helped'>[]): Habits {
  const judged = all.filter(
    ({ choices }) => choices.length > 0 && choices.every(({ verdict }) => verdict !== null),
  );
  const own = judged.map((round) => round.choices.filter((choice) => isUnaided(round, choice)));
  const choices = own.flat();
  const helped = judged.flatMap((round) =>
    round.choices.filter((choice) => choice.by === 'player' && !isUnaided(round, choice)),
  );
  const costs = own.map((ofRound) => sum(ofRound.map(costOf)));
  const rounds = judged.length;
  const [ofSteps, ofMistakes] = costsByKind(choices);
  return {
    rounds,
    perRound: meanOf(costs),
    halfWidth: rounds > 1 ? 1.96 * Math.sqrt(spreadOf(costs) / rounds) : 0,
    steps: rowsOf(ofSteps, rounds),
    mistakes: rowsOf(ofMistakes, rounds),
    named: rounds < LEAST_CASES ? [] : dearestFirst(namedHabits(own, LEAST_CASES), choices, rounds),
    helped: eachCost(helped),
    unaidedPasses: eachCost(choices.filter(({ kind }) => kind === 'pass' || kind === 'blind')),
  };
}

function dearestFirst(
  named: readonly NamedHabit[],
  choices: readonly StoredChoice[],
  rounds: number,
): Habit[] {
  return named
    .map((habit): Habit => ({ ...habit, perRound: sum(choices.filter(isOf(habit)).map(costOf)) / rounds }))
    .filter(({ perRound }) => perRound >= WORTH_NAMING)
    .sort((a, b) => b.perRound - a.perRound);
}

function isOf({ kind, part }: NamedHabit): (choice: StoredChoice) => boolean {
  return (choice) => isMistakeIn(choice, kind, part);
}

/** In one go: there may be fifty thousand choices. */
function costsByKind(
  choices: readonly StoredChoice[],
): [readonly Costs<StepKind>[], readonly Costs<MistakeCategory>[]] {
  const ofSteps = new Map(STEP_KINDS.map((kind): [StepKind, number[]] => [kind, []]));
  const ofMistakes = new Map(MISTAKE_CATEGORY_NAMES.map((kind): [string, number[]] => [kind, []]));
  for (const choice of choices) {
    const cost = costOf(choice);
    ofSteps.get(stepKind(choice))?.push(cost);
    for (const mistake of choice.mistakes ?? []) ofMistakes.get(mistake)?.push(cost);
  }
  return [
    STEP_KINDS.map((kind) => ({ kind, costs: ofSteps.get(kind) ?? [] })),
    MISTAKE_CATEGORY_NAMES.map((kind) => ({ kind, costs: ofMistakes.get(kind) ?? [] })),
  ];
}

function eachCost(choices: readonly StoredChoice[]): CasesCost {
  return { cases: choices.length, perCase: meanOf(choices.map(costOf)) };
}

/** Rounds with an aim that count as the latest. */
const LATEST = 10;

/** Sections said before passes and those within reach, in the latest rounds and in those before, of rounds latest first. */
export function aimsOver(rounds: readonly Pick<RoundSummary, 'aims'>[]): {
  readonly latest: AimsMet;
  readonly earlier: AimsMet;
} {
  const all = rounds.flatMap(({ aims }) => aims ?? []);
  return { latest: together(all.slice(0, LATEST)), earlier: together(all.slice(LATEST)) };
}

export type AimsMet = NonNullable<RoundSummary['aims']>;

function together(all: readonly AimsMet[]): AimsMet {
  return { said: sum(all.map(({ said }) => said)), near: sum(all.map(({ near }) => near)) };
}

/** The kind of step that costs most; null where there are too few rounds or cases to say, or none costs anything. */
export function dearestStep({ rounds, steps }: Pick<Habits, 'rounds' | 'steps'>): StepKind | null {
  const [first] = steps;
  return first?.isSaid && rounds >= LEAST_CASES && first.perRound >= 0.05 ? first.kind : null;
}

/** As a class's teacher reads it too. */
export function mistakeName(kind: MistakeCategory): string {
  return MISTAKE_CATEGORIES[kind];
}

/** What was told to have cost something; a difference that was not told is none. */
function costOf({ verdict, loss }: StoredChoice): number {
  return verdict === 'costly' || verdict === 'a-little-worse' ? Math.max(0, loss ?? 0) : 0;
}

export function stepKind({ kind, step }: Pick<StoredChoice, 'kind' | 'step'>): StepKind {
  if (kind === 'blind') return 'blind';
  if (kind === 'vote') return 'vote';
  if (kind === 'ask' || step === 'courtesy-pass') return 'courtesy';
  return STEP_KINDS.find((direction) => step.endsWith(direction)) ?? 'courtesy';
}

interface Costs<Kind extends string> {
  readonly kind: Kind;
  readonly costs: readonly number[];
}

/** The mean cost of a case is pooled over the kinds; how often it comes in a round is counted. */
function rowsOf<Kind extends string>(
  groups: readonly Costs<Kind>[],
  rounds: number,
): readonly HabitRow<Kind>[] {
  const known = groups.filter(({ costs }) => costs.length > 0);
  const cases = sum(known.map(({ costs }) => costs.length));
  // One spread for all kinds: that of a few cases would be told far too small or far too large.
  const within =
    sum(known.map(({ costs }) => spreadOf(costs) * (costs.length - 1))) / Math.max(1, cases - known.length);
  const means = known.map(
    ({ costs }): GroupMean => ({ mean: meanOf(costs), variance: Math.max(within, 1e-6) / costs.length }),
  );
  const pooled = partialPooling(means).means;
  return known
    .map(({ kind, costs }, nth): HabitRow<Kind> => {
      const often = costs.length / Math.max(1, rounds);
      const { value, halfWidth } = pooled[nth]!;
      return {
        kind,
        cases: costs.length,
        perRound: Math.max(0, value) * often,
        halfWidth: halfWidth * often,
        isSaid: costs.length >= LEAST_CASES,
      };
    })
    .sort((a, b) => Number(b.isSaid) - Number(a.isSaid) || b.perRound - a.perRound);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function meanOf(values: readonly number[]): number {
  return values.length > 0 ? sum(values) / values.length : 0;
}

/** Variance of the values, with one less in the divisor; 0 for one value. */
function spreadOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = meanOf(values);
  return sum(values.map((value) => (value - mean) ** 2)) / (values.length - 1);
}
