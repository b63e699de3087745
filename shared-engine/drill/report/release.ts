// What is told of a drill that everybody plays when they like: counts that are released when ten are through, then five more.
import {
  type ExchangeTerms,
  type Face,
  hasStep,
  isFace,
  type Seat,
  type SeatRecord,
  STEPS,
  type Step,
} from '../../rules/index.ts';
import { agrees, type FrozenSpread, isAfterVote, kindsAt, mergedCells } from './anonymity.ts';
import { type ChoiceKind, choicesBy } from './entry.ts';

/** Players through a deal before anything is told of it, and how many more before more is told (rule PD6). */
export const FIRST_RELEASE = 10;
export const LATER_RELEASE = 5;
/** Cells of a spread that are told at most: those that most players chose. */
const MOST_CELLS = 12;

/** What one player chose in a round, by step: "bam-1 dot-4 west", a number, or "1:bam-1 west" where tiles could go blind. */
export type CountedChoices = { readonly [At in Step]?: string };

/** How many players chose what, by step. */
export type StepCounts = { readonly [At in Step]?: Readonly<Record<string, number>> };

/** What is told of, and what has been in a release but is not told of yet. */
export interface DealCounts {
  readonly told: StepCounts;
  readonly held: StepCounts;
}

export const NO_COUNTS: DealCounts = { told: {}, held: {} };

/** The deal that is counted: how it is played, and the rack that everybody is dealt. */
export interface CountedDeal {
  readonly seat: Seat;
  readonly terms: ExchangeTerms;
  readonly rack: readonly Face[];
}

/** The player's own choices of a closed round. */
export function countedChoices(record: SeatRecord): CountedChoices {
  const choices = choicesBy({ record, analyses: null, toGo: null, aims: [] }).filter(({ own }) => own);
  const counted: { [At in Step]?: string } = {};
  for (const { step, kind, chosen } of choices) {
    const text = typeof chosen === 'number' ? String(chosen) : chosen.join(' ');
    // How many went blind comes before the tiles of the same step.
    counted[step] = kind === 'blind' ? `${text}:` : `${counted[step] ?? ''}${text}`;
  }
  return counted;
}

/** Whether these are enough to tell more, where so many are told of already. */
export function isReleaseDue(told: number, waiting: number): boolean {
  return waiting >= (told === 0 ? FIRST_RELEASE : LATER_RELEASE);
}

/** Steps of which the newcomers are told in this release, in the order of the round. */
export function stepsTaken(
  counts: DealCounts,
  newcomers: readonly CountedChoices[],
  deal: CountedDeal,
): Step[] {
  const { held } = withNewcomers(counts, newcomers);
  const taken: Step[] = [];
  for (const step of STEPS) {
    const fresh = held[step];
    if (fresh === undefined || !isMixed(step, fresh, deal.terms)) continue;
    // How many chose after the vote follows from the vote, and after the asking from that: those come first.
    const before = stepBefore(step, deal.terms);
    const isTold = (at: Step) => spreadsAt(at, addedAt(at, counts, held), deal).length > 0;
    if (before === null || (taken.includes(before) && isTold(before))) taken.push(step);
  }
  return taken;
}

/** With the newcomers told of at these steps, and held back at the others until more have come. */
export function withRelease(
  counts: DealCounts,
  newcomers: readonly CountedChoices[],
  taken: readonly Step[],
): DealCounts {
  const { held } = withNewcomers(counts, newcomers);
  const told: { [At in Step]?: Readonly<Record<string, number>> } = { ...counts.told };
  const left: { [At in Step]?: Readonly<Record<string, number>> } = { ...held };
  for (const step of taken) {
    told[step] = addedAt(step, counts, held);
    delete left[step];
  }
  return { told, held: left };
}

/** What is told of these counts: two cells at least of three players or more, the others as one number. */
export function releasedSpreads({ told }: Pick<DealCounts, 'told'>, deal: CountedDeal): FrozenSpread[] {
  return STEPS.flatMap((step) => spreadsAt(step, told[step] ?? {}, deal));
}

/** Every choice with its count, where players were told that it is shown. */
export function openSpreads({ told }: Pick<DealCounts, 'told'>, deal: CountedDeal): FrozenSpread[] {
  return STEPS.flatMap((step) =>
    kindsAt(step, deal.terms).flatMap((kind): FrozenSpread[] => {
      const groups = groupsOf(kind, told[step] ?? {});
      return groups.length === 0 ? [] : [spreadOf(step, kind, { cells: groups, other: 0 }, deal)];
    }),
  );
}

/** Names the analysis of a choice at a rack that everybody was dealt. */
export function dealtDecision(chosen: readonly Face[]): string {
  return chosen.join(' ');
}

interface Group {
  readonly chosen: readonly Face[] | number;
  readonly count: number;
}

function withNewcomers(counts: DealCounts, newcomers: readonly CountedChoices[]): { held: StepCounts } {
  const held: { [At in Step]?: Record<string, number> } = {};
  for (const step of STEPS) {
    const at = { ...counts.held[step] };
    for (const { [step]: chosen } of newcomers) if (chosen !== undefined) at[chosen] = (at[chosen] ?? 0) + 1;
    if (Object.keys(at).length > 0) held[step] = at;
  }
  return { held };
}

function addedAt(step: Step, { told }: DealCounts, held: StepCounts): Readonly<Record<string, number>> {
  const sum: Record<string, number> = { ...told[step] };
  for (const [chosen, count] of Object.entries(held[step] ?? {})) sum[chosen] = (sum[chosen] ?? 0) + count;
  return sum;
}

/** Where all newcomers chose alike, the difference to the release before would say what each of them chose. */
function isMixed(step: Step, fresh: Readonly<Record<string, number>>, terms: ExchangeTerms): boolean {
  return kindsAt(step, terms).every((kind) => groupsOf(kind, fresh).length > 1);
}

function stepBefore(step: Step, terms: ExchangeTerms): Step | null {
  if (step === 'courtesy-pass') return 'courtesy-ask';
  const isOfSecond = isAfterVote(step) && step !== 'courtesy-ask';
  return isOfSecond && hasStep('vote', terms) ? 'vote' : null;
}

function spreadsAt(step: Step, counts: Readonly<Record<string, number>>, deal: CountedDeal): FrozenSpread[] {
  const spreads = kindsAt(step, deal.terms).flatMap((kind): FrozenSpread[] => {
    const merged = mergedCells(groupsOf(kind, counts), MOST_CELLS);
    return merged === null ? [] : [spreadOf(step, kind, merged, deal)];
  });
  return spreads.filter((spread) => spread.kind !== 'blind' || agrees(spread, spreads));
}

function spreadOf(
  step: Step,
  kind: ChoiceKind,
  { cells, other }: { readonly cells: readonly Group[]; readonly other: number },
  { seat, rack }: CountedDeal,
): FrozenSpread {
  // After the first pass racks follow from earlier choices.
  const isDealt = step === STEPS[0];
  const named = cells.map(({ chosen, count }) => {
    const decisionId = isDealt && typeof chosen !== 'number' ? dealtDecision(chosen) : null;
    return { chosen, count, decisionId };
  });
  return { seat, kind, step, stoodIn: 0, rack: isDealt ? rack : null, cells: named, other, aims: [] };
}

/** In the order of what was chosen, so that nothing shows who came first. */
function groupsOf(kind: ChoiceKind, counts: Readonly<Record<string, number>>): Group[] {
  const groups = new Map<string, number>();
  for (const [text, count] of Object.entries(counts)) {
    const [first = '', rest] = text.split(':');
    const chosen = kind === 'blind' || rest === undefined ? first : rest;
    groups.set(chosen, (groups.get(chosen) ?? 0) + count);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([text, count]) => ({ chosen: chosenIn(kind, text), count }));
}

function chosenIn(kind: ChoiceKind, text: string): readonly Face[] | number {
  return kind === 'pass' ? text.split(' ').filter(isFace) : Number(text);
}

/** A released spread as it is stored, a tenth as long. */
export interface ShortSpread {
  readonly step: Step;
  readonly kind: ChoiceKind;
  readonly cells: readonly (readonly [string, number])[];
  readonly other: number;
}

export function shortSpread({ step, kind, cells, other }: FrozenSpread): ShortSpread {
  const short = cells.map(({ chosen, count }) => {
    return [typeof chosen === 'number' ? String(chosen) : chosen.join(' '), count] as const;
  });
  return { step, kind, cells: short, other };
}

export function spreadFromShort({ step, kind, cells, other }: ShortSpread, deal: CountedDeal): FrozenSpread {
  const groups = cells.map(([text, count]) => ({ chosen: chosenIn(kind, text), count }));
  return spreadOf(step, kind, { cells: groups, other }, deal);
}
