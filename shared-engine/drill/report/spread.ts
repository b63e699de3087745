// What a class chose at one step: each choice once, with its share and its cost, and never who made it.
import { hasBetter, type MeasuredValue, type MistakeCategory } from '../../analysis/index.ts';
import {
  type Face,
  SEATS,
  type Seat,
  type SeatStep,
  STEPS,
  type Step,
  sortFaces,
} from '../../rules/index.ts';
import type { AnalyzedChoice } from './analyzed-choice.ts';
import { type ChoiceKind, type ClassChoice, type ClassEntry, choicesBy } from './entry.ts';
import { meanOfMeasured } from './mean.ts';

/** What deep analyses say of some choices; null until every choice of the step has its own, so that all share one scale. */
export interface Cost {
  /** Mean loss in wins of 100 games. */
  readonly winsLost: MeasuredValue | null;
  /** For how many of them another choice was clearly better. */
  readonly costly: number | null;
}

/** The best that was found at a step where everybody held one rack. */
export interface BestChoice {
  readonly chosen: readonly Face[] | number;
  /** Why, in one sentence. */
  readonly why: string;
}

export interface SpreadChoice extends Cost {
  /** Tiles passed in rack order, or a number: passed blind, asked for, or 1 to continue and 0 to stop. */
  readonly chosen: readonly Face[] | number;
  readonly count: number;
  /** Of the players who chose, 0–1. */
  readonly share: number;
  /** Kinds of mistake that it was from the rack that everybody held; none where racks differed, and before they are known. */
  readonly mistakes: readonly MistakeCategory[];
}

export interface AimShare {
  /** Id of a section of the card. */
  readonly section: string;
  readonly count: number;
  /** Of the players who named an aim at this step, 0–1. */
  readonly share: number;
}

export interface StepSpread extends Cost {
  readonly seat: Seat;
  readonly kind: ChoiceKind;
  readonly step: Step;
  /** Players who chose, and players for whom a bot chose; the latter are in no share. */
  readonly players: number;
  readonly stoodIn: number;
  /** How many different racks they held, and the rack itself if several players all held the same one. */
  readonly racks: number;
  readonly rack: readonly Face[] | null;
  /** Most frequent first. */
  readonly choices: readonly SpreadChoice[];
  /** Players whose choices are still being analyzed; before that no cost is told. */
  readonly pending: number;
  /** Null before that, and where racks differed or may not be shown. */
  readonly best: BestChoice | null;
  /** Players who chose something else that is not told, to keep choices anonymous; missing where none did. */
  readonly hidden?: number;
  /** Whether nothing is told of this step, to keep choices anonymous; missing where something is. */
  readonly withheld?: true;
  readonly aims: readonly AimShare[];
  /** In a guided deal, the choice that the class continued from; missing before that. */
  readonly advancedWith?: readonly Face[] | number;
}

/** In the order of choosing: how many tiles go blind comes before the tiles of the same step. */
const KINDS: readonly ChoiceKind[] = ['blind', 'pass', 'vote', 'ask'];

/**
 * Every step that some player has finished, in the order of the round and separately for each seat, because at a
 * table of four each seat was dealt another rack. `sections` are the ids of the card's sections.
 */
export function spreadsOf(entries: readonly ClassEntry[], sections: readonly string[]): StepSpread[] {
  return SEATS.flatMap((seat) => {
    const mine = entries.filter(({ record }) => record.seat === seat);
    const made = mine.flatMap(choicesBy);
    return STEPS.flatMap((step) =>
      KINDS.flatMap((kind) => {
        const choices = made.filter((choice) => choice.step === step && choice.kind === kind);
        if (choices.length === 0) return [];
        const advancedWith = advancedWithAt(kind, step, mine);
        const spread = { seat, kind, step, ...countsOf(step, choices), aims: aimsAt(step, mine, sections) };
        return [advancedWith === null ? spread : { ...spread, advancedWith }];
      }),
    );
  });
}

function countsOf(
  step: Step,
  all: readonly ClassChoice[],
): Omit<StepSpread, 'seat' | 'kind' | 'step' | 'aims' | 'advancedWith'> {
  const own = all.filter((choice) => choice.own);
  const racks = new Map(own.map(({ rack }) => [rack.join(), rack]));
  const [rack = null] = racks.values();
  const pending = own.filter(({ isPending }) => isPending).length;
  // The rack as dealt is known to the teacher, one that a single player came to is not.
  const isShown = racks.size === 1 && (own.length > 1 || step === STEPS[0]);
  return {
    players: own.length,
    stoodIn: all.length - own.length,
    racks: racks.size,
    rack: racks.size === 1 && own.length > 1 ? rack : null,
    choices: choicesOf(own, { isCostTold: pending === 0, isOneRack: racks.size === 1 }),
    pending,
    best: isShown && pending === 0 ? bestOf(own.map(({ analyzed }) => ({ analyzed, count: 1 }))) : null,
    ...(pending === 0 ? costOf(own.map(({ analyzed }) => analyzed)) : NO_COST),
  };
}

interface Told {
  readonly isCostTold: boolean;
  readonly isOneRack: boolean;
}

function choicesOf(own: readonly ClassChoice[], { isCostTold, isOneRack }: Told): SpreadChoice[] {
  const alike = new Map<string, ClassChoice[]>();
  for (const choice of own) {
    const key = String(choice.chosen);
    alike.set(key, [...(alike.get(key) ?? []), choice]);
  }
  // The order of the players must not show: choices made equally often are in the order of their tiles.
  return [...alike]
    .sort(([a, some], [b, others]) => others.length - some.length || (a < b ? -1 : 1))
    .map(([, same]) => ({
      chosen: same[0]!.chosen,
      count: same.length,
      share: same.length / own.length,
      mistakes: isCostTold && isOneRack ? (same[0]!.analyzed?.mistakes ?? []) : [],
      ...(isCostTold ? costOf(same.map(({ analyzed }) => analyzed)) : NO_COST),
    }));
}

export const NO_COST: Cost = { winsLost: null, costly: null };

export function costOf(analyzed: readonly (AnalyzedChoice | null)[]): Cost {
  const known = analyzed.flatMap((one) => one ?? []);
  if (known.length === 0) return NO_COST;
  return {
    winsLost: meanOfMeasured(known.flatMap(({ loss }) => loss ?? [])),
    costly: known.filter(({ verdict }) => verdict === 'costly').length,
  };
}

interface Weighted {
  readonly analyzed: AnalyzedChoice | null;
  /** How many made this choice. */
  readonly count: number;
}

/**
 * Of the bests that the analyses of one rack found, the one with the most wins, and why in the words of the most frequent
 * choice that it beats: somebody made that one. The order of the players makes no difference.
 */
export function bestOf(choices: readonly Weighted[]): BestChoice | null {
  const found = new Map<string, { analyzed: AnalyzedChoice; count: number }>();
  for (const { analyzed, count } of choices) {
    if (analyzed === null) continue;
    const key = JSON.stringify([analyzed.best, analyzed.verdict, analyzed.loss]);
    found.set(key, { analyzed, count: (found.get(key)?.count ?? 0) + count });
  }
  const inOrder = [...found].sort(([a, one], [b, other]) => other.count - one.count || (a < b ? -1 : 1));
  const all = inOrder.map(([, { analyzed }]) => analyzed);
  const [first, ...rest] = all.map(({ best }) => best);
  if (first === undefined) return null;
  const best = rest.reduce((leader, one) => (one.wins > leader.wins ? one : leader), first);
  const same = all.filter((one) => String(one.best.chosen) === String(best.chosen));
  const { why } = (same.find(({ verdict }) => hasBetter(verdict)) ?? same[0]!).best;
  return { chosen: best.chosen, why };
}

/** All tables of a guided deal continued from the same choices, some of them further than others. */
function advancedWithAt(
  kind: ChoiceKind,
  step: Step,
  entries: readonly ClassEntry[],
): ClassChoice['chosen'] | null {
  for (const { record } of entries) {
    const { steps, actualSteps = [], seat } = record;
    for (const at of steps.slice(0, actualSteps.length)) {
      const chosen = chosenIn(at, { seat, kind, step });
      if (chosen !== null) return chosen;
    }
  }
  return null;
}

/** What the seat chose with this outcome; null where it is the outcome of another step. */
export function chosenIn(
  at: SeatStep,
  { seat, kind, step }: Pick<StepSpread, 'seat' | 'kind' | 'step'>,
): ClassChoice['chosen'] | null {
  if (at.kind === 'vote' && kind === 'vote') return Number(at.go[seat]);
  if (at.kind === 'ask' && kind === 'ask') return at.asked[seat];
  if (at.kind !== 'move' || at.step !== step || at.by[seat] === null) return null;
  if (kind === 'pass') return sortFaces(at.gave);
  return kind === 'blind' ? at.blind[seat] : null;
}

function aimsAt(step: Step, entries: readonly ClassEntry[], sections: readonly string[]): AimShare[] {
  const named = entries
    .map(({ aims }) => aims.filter((aim) => aim.step === step).flatMap((aim) => aim.sections))
    .map((ids) => sections.filter((section) => ids.includes(section)))
    .filter((ids) => ids.length > 0);
  return sections.flatMap((section) => {
    const count = named.filter((ids) => ids.includes(section)).length;
    return count === 0 ? [] : [{ section, count, share: count / named.length }];
  });
}
