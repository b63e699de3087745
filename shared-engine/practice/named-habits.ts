// The kinds of mistake that somebody makes clearly more often than a club player does: what the page may call a habit.
import { choiceOfMistake, MISTAKE_CATEGORY_NAMES, type MistakeCategory } from '../analysis/index.ts';
import { evidenceAgainst } from './evidence.ts';
import {
  countedIn,
  countMistakes,
  EXCHANGE_PARTS,
  type ExchangePart,
  isMistakeIn,
  type MistakeCounts,
  type SureMistakes,
} from './mistake-counts.ts';
import type { StoredChoice } from './stored-round.ts';
import { USUAL_MISTAKES } from './usual-mistakes.ts';

/** Somebody without a habit is told of one with at most this chance, over all kinds, parts and looks together. */
const EVER_WRONG = 0.05;
/** A habit is more than this many times as often as usual: club players differ, and so do cards. */
const MORE_THAN_USUAL = 1.5;
/** The share of its cases in one part from which on it is told with that part. */
const MOSTLY = 0.75;

export interface NamedHabit {
  readonly kind: MistakeCategory;
  /** The Charleston in which it shows, or the whole exchange. */
  readonly part: ExchangePart;
  /** In how many rounds it was made there, of how many, and in how many of so many a club player makes it. */
  readonly made: number;
  readonly offered: number;
  readonly usual: number;
}

/** One kind in one part. */
type Cell = Pick<NamedHabit, 'kind' | 'part'>;

/** A pass for another reason says nothing that helps, so it is no habit. */
const KINDS = MISTAKE_CATEGORY_NAMES.filter((kind) => kind !== 'poorer-fit');
const CELLS: readonly Cell[] = KINDS.flatMap((kind) => partsOf(kind).map((part): Cell => ({ kind, part })));

/** A whole before its parts. */
function partsOf(kind: MistakeCategory): readonly ExchangePart[] {
  const chosen = choiceOfMistake(kind);
  return chosen === 'pass' || chosen === 'blind' ? EXCHANGE_PARTS : ['any'];
}

/** Of own choices by round. Each kind at most once, in no order; `leastCases` of one are needed to say anything of it. */
export function namedHabits(
  rounds: readonly (readonly StoredChoice[])[],
  leastCases: number,
): readonly NamedHabit[] {
  const counts = countMistakes(rounds);
  const clear = CELLS.map(({ kind, part }): NamedHabit => {
    const counted = countedIn(counts, kind, part);
    return { kind, part, ...counted, usual: usualChance(kind, part) * counted.offered };
  }).filter(isClear);
  return KINDS.flatMap((kind): NamedHabit[] => {
    const cells = clear.filter((cell) => cell.kind === kind && casesOf(cell, rounds) >= leastCases);
    const { made } = countedIn(counts, kind, 'any');
    // A part is told where most of it shows there, or where it is clear there alone.
    const told = cells.find((cell) => cell.part !== 'any' && cell.made >= MOSTLY * made) ?? cells[0];
    return told === undefined ? [] : [told];
  });
}

function isClear({ kind, part, made, offered }: NamedHabit): boolean {
  const usual = Math.min(0.9, MORE_THAN_USUAL * usualChance(kind, part));
  return evidenceAgainst(usual, { cases: made, rounds: offered }) >= CELLS.length / EVER_WRONG;
}

function casesOf({ kind, part }: Cell, rounds: readonly (readonly StoredChoice[])[]): number {
  return rounds.flat().filter((choice) => isMistakeIn(choice, kind, part)).length;
}

/** The chance that a club player makes it in a round; a kind that was hardly ever seen is not taken to be rarer. */
export function usualChance(kind: MistakeCategory, part: ExchangePart = 'any'): number {
  const usual: MistakeCounts = USUAL_MISTAKES;
  const { made, offered } = countedIn(usual, kind, part);
  return (made + 2) / (offered + 4);
}

/** The chance that a single choice of a club player is one beyond doubt, where it can be one. */
export function sureChance(kind: MistakeCategory): number {
  const { choices, made }: SureMistakes = USUAL_MISTAKES.sure;
  return (made[kind] + 1) / (choices[choiceOfMistake(kind)] + 2);
}
