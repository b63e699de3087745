// What may be told of a step in an anonymous class: counts of three players or more, of six or more dealt the same rack.
import {
  type ExchangeTerms,
  type Face,
  mayPassBlind,
  PASS_SIZE,
  type Seat,
  STEPS,
  type Step,
} from '../../rules/index.ts';
import type { AnalyzedChoice } from './analyzed-choice.ts';
import { type ChoiceKind, type ClassEntry, choicesBy } from './entry.ts';
import {
  type AimShare,
  bestOf,
  costOf,
  NO_COST,
  type SpreadChoice,
  type StepSpread,
  spreadsOf,
} from './spread.ts';

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
  /** Id of the decision, by which its analysis is found; null where none is told, because racks were not the same. */
  readonly decisionId: string | null;
}

interface Cells<T> {
  readonly cells: readonly T[];
  readonly other: number;
}

/**
 * At least two cells of three players or more after the others are merged; null where there are not. Of more than `most`
 * cells the smallest are merged too.
 */
export function mergedCells<T extends { readonly count: number }>(
  groups: readonly T[],
  most = Number.POSITIVE_INFINITY,
): Cells<T> | null {
  const large = groups.filter(({ count }) => count >= MIN_CELL).sort((a, b) => b.count - a.count);
  const cells = large.slice(0, most);
  const merged = [...large.slice(most), ...groups.filter(({ count }) => count < MIN_CELL)];
  let other = merged.reduce((sum, { count }) => sum + count, 0);
  while (other > 0 && other < MIN_CELL && cells.length > 0) other += cells.pop()!.count;
  return cells.length + Number(other >= MIN_CELL) >= 2 ? { cells, other } : null;
}

export interface FrozenStep {
  readonly seat: Seat;
  readonly step: Step;
  /** The rack all of them held at the step, if it follows from what the teacher knows; null otherwise. */
  readonly rack: readonly Face[] | null;
}

/** The id of a decision that several made alike; null where it is not known. */
export type DecisionIdOf = (entry: ClassEntry, at: Pick<StepSpread, 'kind' | 'step'>) => string | null;

/**
 * What is told of a step of these players, who were dealt the same rack on the same seat. Nothing where too few of
 * them chose, or too few alike. What a pass or a vote cost is told only where all held one rack: otherwise it would
 * depend on earlier choices, and on more than is told of those. What a number of blind tiles cost depends on the others.
 */
export function frozenSpreads(
  { seat, step, rack }: FrozenStep,
  entries: readonly ClassEntry[],
  sections: readonly string[],
  decisionIdOf: DecisionIdOf,
): FrozenSpread[] {
  const mine = entries.filter((entry) => choicesBy(entry).some((one) => one.own && one.step === step));
  const spreads = spreadsOf(entries, sections).filter((one) => one.seat === seat && one.step === step);
  const frozen = spreads.flatMap((spread): FrozenSpread[] => {
    const merged = mergedCells(spread.choices);
    if (merged === null) return [];
    const { kind, stoodIn } = spread;
    const analyzed = rack === null || kind === 'blind' ? [] : entries;
    const cells = merged.cells.map(({ chosen, count }): FrozenCell => {
      const alike = analyzed.find((entry) => madeBy(entry, { kind, step }, chosen));
      return { chosen, count, decisionId: alike ? decisionIdOf(alike, { kind, step }) : null };
    });
    const aims = frozenAims(step, mine, sections);
    return [{ seat, kind, step, stoodIn, rack, cells, other: merged.other, aims }];
  });
  return frozen.filter((spread) => spread.kind !== 'blind' || agrees(spread, frozen));
}

function madeBy(
  entry: ClassEntry,
  { kind, step }: Pick<StepSpread, 'kind' | 'step'>,
  chosen: SpreadChoice['chosen'],
): boolean {
  return choicesBy(entry).some(
    (one) => one.own && one.kind === kind && one.step === step && String(one.chosen) === String(chosen),
  );
}

/**
 * A pass tells how many of its tiles went blind. Whoever subtracts the passes from the numbers passed blind must not
 * be left with fewer than three players.
 */
export function agrees(blind: FrozenSpread, frozen: readonly FrozenSpread[]): boolean {
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

/** By the id of the decision; null where no deep analyses are made. */
export type StoredAnalyses = Readonly<Record<string, AnalyzedChoice>> | null;

/** A frozen spread as reports and the big screen show it, with its costs once every choice told has its analysis. */
export function spreadOfFrozen(
  { cells, other, rack, ...rest }: FrozenSpread,
  analyses: StoredAnalyses,
): StepSpread {
  const players = cells.reduce((sum, { count }) => sum + count, other);
  const found = cells.map((cell) => ({ ...cell, analyzed: analysisIn(cell, analyses) }));
  const waiting = found.filter(({ decisionId, analyzed }) => decisionId !== null && analyzed === null);
  const pending = analyses === null ? 0 : waiting.reduce((sum, { count }) => sum + count, 0);
  const choices = found.map(({ chosen, count, analyzed }): SpreadChoice => {
    const cost = pending === 0 ? costOf(Array.from({ length: count }, () => analyzed)) : NO_COST;
    const mistakes = rack !== null && pending === 0 ? (analyzed?.mistakes ?? []) : [];
    return { chosen, count, share: count / players, mistakes, ...cost };
  });
  const best = rack !== null && pending === 0 ? bestOf(found) : null;
  const racks = rack === null ? 0 : 1;
  const told = { players, racks, rack, choices, pending, best, ...NO_COST };
  return { ...rest, ...told, ...(other > 0 && { hidden: other }) };
}

export function analysisIn({ decisionId }: FrozenCell, analyses: StoredAnalyses): AnalyzedChoice | null {
  return (decisionId !== null && analyses?.[decisionId]) || null;
}

/** A step of which nothing is told, not even how many chose. */
export function withheldSpread(
  at: Pick<StepSpread, 'seat' | 'kind' | 'step'>,
  rack: readonly Face[] | null,
): StepSpread {
  const nothing = { choices: [], aims: [], pending: 0, best: null, ...NO_COST };
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
