// What a class chose at one step: each choice once, with its share and what it cost; no choice says whose it was.

import type { MeasuredValue } from '../../analysis/review/analysis.ts';
import { SEATS, type Seat } from '../../rules/deal/seat.ts';
import { STEPS, type Step } from '../../rules/exchange/schedule.ts';
import { sortFaces } from '../../rules/tiles/bag.ts';
import type { Face } from '../../rules/tiles/face.ts';
import { type ChoiceKind, type ClassChoice, type ClassEntry, choicesBy } from './entry.ts';
import { type ClassMean, classMean, meanOfMeasured } from './mean.ts';

/** What the reviews say of some choices; each is null as long as no review says it. */
export interface Cost {
  /** Mean loss in tiles, by the quick review. */
  readonly loss: ClassMean | null;
  /** Mean loss in points of outlook, by the deeper judgement, once every one of them has it. */
  readonly winsLost: MeasuredValue | null;
  /** How many of them had something clearly better. */
  readonly costly: number | null;
}

export interface SpreadChoice extends Cost {
  /** Tiles passed in rack order, or a number: passed unseen, asked for, 1 for going on and 0 for stopping. */
  readonly chosen: readonly Face[] | number;
  readonly count: number;
  /** Of the players who chose, 0–1. */
  readonly share: number;
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
  /** Players who chose, and players for whom a bot or stand-in did; those are in no share. */
  readonly players: number;
  readonly stoodIn: number;
  /** How many different racks they faced, and the rack where several players all faced one: never that of one alone. */
  readonly racks: number;
  readonly rack: readonly Face[] | null;
  /** Most frequent first. */
  readonly choices: readonly SpreadChoice[];
  /** Players whose choices are left out so that nobody is told from the others; missing where none is. */
  readonly hidden?: number;
  readonly aims: readonly AimShare[];
  /** Where the class plays one line: what it went on from here, as choices are written; missing before that. */
  readonly advancedWith?: readonly Face[] | number;
}

/** How many go unseen is chosen before the tiles of the same step. */
const KINDS: readonly ChoiceKind[] = ['blind', 'pass', 'vote', 'ask'];

/**
 * Every step that any player has behind it, in the order of the round, apart for each seat: where four players share a
 * table, each seat was dealt another rack. `sections` are the ids of the card.
 */
export function spreadsOf(entries: readonly ClassEntry[], sections: readonly string[]): StepSpread[] {
  return SEATS.flatMap((seat) => {
    const mine = entries.filter(({ record }) => record.seat === seat);
    const made = mine.flatMap(choicesBy);
    return STEPS.flatMap((step) =>
      KINDS.flatMap((kind) => {
        const choices = made.filter((choice) => choice.step === step && choice.kind === kind);
        if (choices.length === 0) return [];
        const wentOn = advancedWithAt(kind, step, mine);
        const spread = { seat, kind, step, ...countsOf(choices), aims: aimsAt(step, mine, sections) };
        return [wentOn === null ? spread : { ...spread, wentOn }];
      }),
    );
  });
}

function countsOf(
  all: readonly ClassChoice[],
): Omit<StepSpread, 'seat' | 'kind' | 'step' | 'aims' | 'wentOn'> {
  const own = all.filter((choice) => choice.own);
  const racks = new Map(own.map(({ rack }) => [rack.join(), rack]));
  const [rack = null] = racks.values();
  return {
    players: own.length,
    stoodIn: all.length - own.length,
    racks: racks.size,
    rack: racks.size === 1 && own.length > 1 ? rack : null,
    choices: choicesOf(own),
    ...costOf(own),
  };
}

function choicesOf(own: readonly ClassChoice[]): SpreadChoice[] {
  const alike = new Map<string, ClassChoice[]>();
  for (const choice of own) {
    const key = String(choice.chosen);
    alike.set(key, [...(alike.get(key) ?? []), choice]);
  }
  // Players come in no order of theirs: choices made equally often stand in the order of their tiles.
  return [...alike]
    .sort(([a, some], [b, others]) => others.length - some.length || (a < b ? -1 : 1))
    .map(([, same]) => ({
      chosen: same[0]!.chosen,
      count: same.length,
      share: same.length / own.length,
      ...costOf(same),
    }));
}

function costOf(choices: readonly ClassChoice[]): Cost {
  const judged = choices.flatMap((choice) => choice.judged ?? []);
  const points = judged.flatMap((one) => one.winsLost ?? []);
  return {
    loss: classMean(judged.map(({ loss }) => loss)),
    winsLost: points.length === choices.length ? meanOfMeasured(points) : null,
    costly: judged.length === 0 ? null : judged.filter(({ costly }) => costly).length,
  };
}

/** All have followed the same line, some of them further than others. */
function advancedWithAt(
  kind: ChoiceKind,
  step: Step,
  entries: readonly ClassEntry[],
): ClassChoice['chosen'] | null {
  for (const { record } of entries) {
    const { steps, actualSteps = [], seat } = record;
    for (const at of steps.slice(0, actualSteps.length)) {
      if (at.kind === 'vote' && kind === 'vote') return Number(at.go[seat]);
      if (at.kind === 'ask' && kind === 'ask') return at.asked[seat];
      if (at.kind !== 'move' || at.step !== step || at.by[seat] === null) continue;
      if (kind === 'pass') return sortFaces(at.gave);
      if (kind === 'blind') return at.blind[seat];
    }
  }
  return null;
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
