// The kinds of mistake that somebody makes clearly more often than a club player does: what the page may call a habit.
import { choiceOfMistake, MISTAKE_CATEGORY_NAMES, type MistakeCategory } from '../analysis/index.ts';
import { evidenceAgainst } from './evidence.ts';
import {
  countedIn,
  countMistakes,
  EXCHANGE_PARTS,
  type ExchangePart,
  type MistakeCounts,
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
  /** The Charleston in which it shows; null for the whole exchange. */
  readonly part: 'first' | 'second' | null;
  /** How often it was made there, in how many choices, and in how many of so many a club player makes it. */
  readonly cases: number;
  readonly choices: number;
  readonly usualCases: number;
}

/** One kind in one part, or in all of them. */
type Cell = Pick<NamedHabit, 'kind' | 'part'>;

/** A pass for another reason says nothing that helps, so it is no habit. */
const KINDS = MISTAKE_CATEGORY_NAMES.filter((kind) => kind !== 'poorer-fit');
const CELLS: readonly Cell[] = KINDS.flatMap((kind) => partsOf(kind).map((part): Cell => ({ kind, part })));

function partsOf(kind: MistakeCategory): readonly Cell['part'][] {
  const chosen = choiceOfMistake(kind);
  return chosen === 'pass' || chosen === 'blind' ? [null, 'first', 'second'] : [null];
}

/** Each kind at most once, in no order; `leastCases` are needed to say anything of one. */
export function namedHabits(choices: readonly StoredChoice[], leastCases: number): readonly NamedHabit[] {
  const counts = countMistakes(choices);
  const clear = CELLS.map(({ kind, part }): NamedHabit => {
    const counted = countedIn(counts, kind, placesOf(part));
    return { kind, part, ...counted, usualCases: usualChance(kind, part) * counted.choices };
  }).filter((cell) => cell.cases >= leastCases && isClear(cell));
  return KINDS.flatMap((kind): NamedHabit[] => {
    const all = countedIn(counts, kind, EXCHANGE_PARTS).cases;
    const cells = clear.filter((cell) => cell.kind === kind);
    // A part is told where most of it shows there, or where it is clear there alone; a whole comes before its parts.
    const told = cells.find(({ part, cases }) => part !== null && cases >= MOSTLY * all) ?? cells[0];
    return told === undefined ? [] : [told];
  });
}

function isClear({ kind, part, cases, choices }: NamedHabit): boolean {
  const usual = Math.min(0.9, MORE_THAN_USUAL * usualChance(kind, part));
  return evidenceAgainst(usual, { cases, choices }) >= CELLS.length / EVER_WRONG;
}

function placesOf(part: Cell['part']): readonly ExchangePart[] {
  return part === null ? EXCHANGE_PARTS : [part];
}

/** The chance that a club player makes it in one choice; a kind that was hardly ever seen is not taken to be rarer. */
export function usualChance(kind: MistakeCategory, part: Cell['part'] = null): number {
  const usual: MistakeCounts = USUAL_MISTAKES;
  const { cases, choices } = countedIn(usual, kind, placesOf(part));
  return (cases + 2) / (choices + 4);
}
