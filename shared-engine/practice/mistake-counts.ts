// How often each kind of mistake was made, and in how many choices it could have been, by part of the exchange.
import { choiceOfMistake, MISTAKE_CATEGORY_NAMES, type MistakeCategory } from '../analysis/index.ts';
import type { StoredChoice } from './stored-round.ts';

/** The first Charleston, the second one, and what belongs to neither. */
export const EXCHANGE_PARTS = ['first', 'second', 'neither'] as const;
export type ExchangePart = (typeof EXCHANGE_PARTS)[number];

type ByPart = Readonly<Record<ExchangePart, number>>;

export interface MistakeCounts {
  /** Choices by what was chosen. */
  readonly choices: Readonly<Record<StoredChoice['kind'], ByPart>>;
  /** How many of them were, or seemed to be, a mistake of each kind. */
  readonly cases: Readonly<Record<MistakeCategory, ByPart>>;
}

type Counted = Record<ExchangePart, number>;

/** In one go: there may be fifty thousand choices. */
export function countMistakes(choices: readonly StoredChoice[]): MistakeCounts {
  const offered = { pass: none(), blind: none(), vote: none(), ask: none() };
  const made = new Map<string, Counted>(MISTAKE_CATEGORY_NAMES.map((kind) => [kind, none()]));
  for (const { kind, step, mistakes = [], leaning } of choices) {
    const part = partOf(step);
    offered[kind][part]++;
    for (const mistake of leaning === undefined ? mistakes : [...mistakes, leaning]) {
      const counted = made.get(mistake);
      // A later version of the page may have stored other kinds.
      if (counted !== undefined) counted[part]++;
    }
  }
  return { choices: offered, cases: Object.fromEntries(made) as Record<MistakeCategory, ByPart> };
}

function none(): Counted {
  return { first: 0, second: 0, neither: 0 };
}

export function partOf(step: StoredChoice['step']): ExchangePart {
  if (step.startsWith('first')) return 'first';
  return step.startsWith('second') ? 'second' : 'neither';
}

/** Of one kind of mistake in some parts: its cases, and the choices in which it could have been made. */
export function countedIn(
  { choices, cases }: MistakeCounts,
  kind: MistakeCategory,
  parts: readonly ExchangePart[],
): { readonly cases: number; readonly choices: number } {
  const offered = choices[choiceOfMistake(kind)];
  const sum = (counted: ByPart) => parts.reduce((total, part) => total + counted[part], 0);
  return { cases: sum(cases[kind]), choices: sum(offered) };
}
