// What may be told of a step in an anonymous class: counts of three players or more, of six or more dealt the same rack.

import { type MistakeCategory, mistakesOf } from '../../analysis/index.ts';
import {
  type ExchangeTerms,
  type Face,
  mayPassBlind,
  PASS_SIZE,
  type Seat,
  STEPS,
  type Step,
} from '../../rules/index.ts';
import { type ChoiceKind, type ClassEntry, choicesBy } from './entry.ts';
import { classMean } from './mean.ts';
import { type AimShare, type SpreadChoice, type StepSpread, spreadsOf } from './spread.ts';

/** The fewest players of one seat, dealt the same rack, of whom anything is counted. */
export const MIN_COHORT = 6;
/** The fewest players behind any number that is shown. */
const MIN_CELL = 3;
/** Kept apart from every list of faces. */
const NO_AIM = '';

/** What is told of one kind of choice at one step. It is computed once, when the step is frozen. */
export interface FrozenSpread {
  readonly seat: Seat;
  readonly kind: ChoiceKind;
  readonly step: Step;
  readonly stoodIn: number;
  /** The rack that everybody counted held, where it is one that the teacher knows. */
  readonly rack: readonly Face[] | null;
  readonly cells: readonly FrozenCell[];
  /** Players who chose something else; 0 or at least three. */
  readonly other: number;
  readonly aims: readonly AimShare[];
}

export interface FrozenCell {
  readonly chosen: SpreadChoice['chosen'];
  readonly count: number;
  /** In tiles to go, by the quick review; null where the racks were not the same. */
  readonly loss: number | null;
  readonly costly: boolean | null;
  readonly mistakes: readonly MistakeCategory[];
}

interface Cells<T> {
  readonly cells: readonly T[];
  readonly other: number;
}

/** At least two cells of three players or more after the others are merged; null where there are not. */
export function mergedCells<T extends { readonly count: number }>(groups: readonly T[]): Cells<T> | null {
  const cells = groups.filter(({ count }) => count >= MIN_CELL).sort((a, b) => b.count - a.count);
  let other = groups.reduce((sum, { count }) => sum + (count < MIN_CELL ? count : 0), 0);
  while (other > 0 && other < MIN_CELL && cells.length > 0) other += cells.pop()!.count;
  return cells.length + Number(other >= MIN_CELL) >= 2 ? { cells, other } : null;
}

export interface FrozenStep {
  readonly seat: Seat;
  readonly step: Step;
  /** The rack all of them held at the step, if it follows from what the teacher knows; null otherwise. */
  readonly rack: readonly Face[] | null;
}

/**
 * What is told of a step of these players, who were dealt the same rack on the same seat. Nothing where too few of
 * them chose, or too few alike. What it cost is told only where all held one rack: otherwise it would depend on
 * earlier choices, and on more than is told of those.
 */
export function frozenSpreads(
  { seat, step, rack }: FrozenStep,
  entries: readonly ClassEntry[],
  sections: readonly string[],
): FrozenSpread[] {
  const mine = entries.filter((entry) => choicesBy(entry).some((one) => one.own && one.step === step));
  const spreads = spreadsOf(entries, sections).filter((one) => one.seat === seat && one.step === step);
  const frozen = spreads.flatMap((spread): FrozenSpread[] => {
    const merged = mergedCells(spread.choices);
    if (merged === null) return [];
    const cells = merged.cells.map((choice) => cellOf(spread, choice, rack === null ? [] : entries));
    const { kind, stoodIn } = spread;
    const aims = frozenAims(step, mine, sections);
    return [{ seat, kind, step, stoodIn, rack, cells, other: merged.other, aims }];
  });
  return frozen.filter((spread) => spread.kind !== 'blind' || agrees(spread, frozen));
}

function cellOf(
  { kind, step }: StepSpread,
  choice: SpreadChoice,
  reviewed: readonly ClassEntry[],
): FrozenCell {
  const { chosen, count } = choice;
  const cell = { chosen, count, loss: null, costly: null, mistakes: [] };
  const alike = reviewed.find((entry) =>
    choicesBy(entry).some(
      (one) => one.own && one.kind === kind && one.step === step && String(one.chosen) === String(chosen),
    ),
  );
  const review = alike?.review;
  const reviewOf = review?.choices.find((one) => one.kind === kind && one.step === step);
  if (!review || !reviewOf || choice.costly === null) return cell;
  // Who chose alike may have said other aims: what an aim makes of a choice is not told.
  const mistakes = mistakesOf(reviewOf);
  return { ...cell, loss: reviewOf.loss, costly: choice.costly > 0, mistakes };
}

/**
 * A pass tells how many of its tiles went blind. Whoever subtracts the passes from the numbers passed blind must not
 * be left with fewer than three players.
 */
function agrees(blind: FrozenSpread, frozen: readonly FrozenSpread[]): boolean {
  const passes = frozen.find(({ kind }) => kind === 'pass')?.cells ?? [];
  const leavesEnough = (count: number, told: readonly FrozenCell[]): boolean => {
    const rest = told.reduce((left, cell) => left - cell.count, count);
    return rest === 0 || rest >= MIN_CELL;
  };
  const numbers = blind.cells.map(({ chosen }) => chosen);
  const unlike = passes.filter((cell) => !numbers.includes(blindIn(cell)));
  return (
    leavesEnough(blind.other, unlike) &&
    blind.cells.every(({ chosen, count }) =>
      leavesEnough(
        count,
        passes.filter((cell) => blindIn(cell) === chosen),
      ),
    )
  );
}

function blindIn({ chosen }: FrozenCell): number {
  return PASS_SIZE - (typeof chosen === 'number' ? 0 : chosen.length);
}

/** Sections named together are one answer, and so is naming none: the same rule as for choices holds for these. */
function frozenAims(step: Step, entries: readonly ClassEntry[], sections: readonly string[]): AimShare[] {
  const groups = new Map<string, { readonly named: readonly string[]; readonly count: number }>();
  for (const { aims } of entries) {
    const ids = aims.filter((aim) => aim.step === step).flatMap((aim) => aim.sections);
    const named = sections.filter((section) => ids.includes(section));
    const key = named.join() || NO_AIM;
    groups.set(key, { named, count: (groups.get(key)?.count ?? 0) + 1 });
  }
  const alike = [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, group]) => group);
  const told = mergedCells(alike)?.cells.filter(({ named }) => named.length > 0) ?? [];
  const players = told.reduce((sum, { count }) => sum + count, 0);
  return sections.flatMap((section) => {
    const naming = told.filter(({ named }) => named.includes(section));
    const count = naming.reduce((sum, one) => sum + one.count, 0);
    return count === 0 ? [] : [{ section, count, share: count / players }];
  });
}

/** A frozen spread as reports and the big screen show it. */
export function spreadOfFrozen({ cells, other, rack, ...rest }: FrozenSpread): StepSpread {
  const players = cells.reduce((sum, { count }) => sum + count, other);
  const nothing = { loss: null, winsLost: null, costly: null };
  const choices = cells.map(({ chosen, count, loss, costly }): SpreadChoice => {
    const cost = {
      loss: loss === null ? null : classMean(Array.from({ length: count }, () => loss)),
      winsLost: null,
      costly: costly === null ? null : Number(costly) * count,
    };
    return { chosen, count, share: count / players, ...cost };
  });
  const racks = rack === null ? 0 : 1;
  return { ...rest, players, racks, rack, choices, ...nothing, ...(other > 0 && { hidden: other }) };
}

/** A step of which nothing is told, not even how many chose. */
export function withheldSpread(
  at: Pick<StepSpread, 'seat' | 'kind' | 'step'>,
  rack: readonly Face[] | null,
): StepSpread {
  const nothing = { choices: [], aims: [], loss: null, winsLost: null, costly: null };
  return { ...at, players: 0, stoodIn: 0, racks: rack ? 1 : 0, rack, ...nothing, withheld: true };
}

/** What is chosen at a step, in the order of choosing. */
export function kindsAt(step: Step, terms: ExchangeTerms): readonly ChoiceKind[] {
  if (step === 'vote') return ['vote'];
  if (step === 'courtesy-ask') return ['ask'];
  return mayPassBlind(step, terms) ? ['blind', 'pass'] : ['pass'];
}

/** Whether the way to this step depends on the vote, so that whoever is there tells something of it. */
export function isAfterVote(step: Step): boolean {
  return STEPS.indexOf(step) > STEPS.indexOf('vote');
}
