// In how many rounds each kind of mistake was made, of those in which it could have been, by part of the exchange.
import { choiceOfMistake, MISTAKE_CATEGORY_NAMES, type MistakeCategory } from '../analysis/index.ts';
import type { StoredChoice } from './stored-round.ts';

/** Anywhere in the exchange, or in one of its Charlestons. */
export const EXCHANGE_PARTS = ['any', 'first', 'second'] as const;
export type ExchangePart = (typeof EXCHANGE_PARTS)[number];

/** Where a kind of mistake can be made: at a choice of its kind, or at the first pass that could give a flower away. */
type Occasion = StoredChoice['kind'] | 'first-flower';

type ByPart = Readonly<Record<ExchangePart, number>>;

/** Rounds and not choices: what was held in one of them made several of its mistakes, but no mistake of another. */
export interface MistakeCounts {
  /** Rounds with such an occasion. */
  readonly offered: Readonly<Record<Occasion, ByPart>>;
  /** Rounds with a choice that was, or seemed to be, a mistake of that kind. */
  readonly made: Readonly<Record<MistakeCategory, ByPart>>;
}

type Counted = Record<ExchangePart, number>;

/** Own choices by round, in one go: there may be fifty thousand. */
export function countMistakes(rounds: readonly (readonly StoredChoice[])[]): MistakeCounts {
  const offered = { pass: none(), blind: none(), vote: none(), ask: none(), 'first-flower': none() };
  const made = new Map<string, Counted>(MISTAKE_CATEGORY_NAMES.map((kind) => [kind, none()]));
  for (const choices of rounds) {
    for (const part of EXCHANGE_PARTS) {
      const inPart = choices.filter(({ step }) => isIn(part, step));
      for (const kind of new Set(inPart.map((choice) => choice.kind))) offered[kind][part]++;
      const firstFlower = inPart.find(({ withFlower }) => withFlower);
      if (firstFlower !== undefined) offered['first-flower'][part]++;
      for (const kind of new Set(inPart.flatMap(mistakesIn))) {
        if (kind === 'flower-given' && !(firstFlower && mistakesIn(firstFlower).includes(kind))) continue;
        // A later version of the page may have stored other kinds.
        const counted = made.get(kind);
        if (counted !== undefined) counted[part]++;
      }
    }
  }
  return { offered, made: Object.fromEntries(made) as Record<MistakeCategory, ByPart> };
}

/** How often a choice was a mistake for sure, choice by choice: what a deal that is drawn for a kind has to beat. */
export interface SureMistakes {
  readonly choices: Readonly<Record<StoredChoice['kind'], number>>;
  readonly made: Readonly<Record<MistakeCategory, number>>;
}

export function countSureMistakes(rounds: readonly (readonly StoredChoice[])[]): SureMistakes {
  const choices = { pass: 0, blind: 0, vote: 0, ask: 0 };
  const made = Object.fromEntries(MISTAKE_CATEGORY_NAMES.map((kind) => [kind, 0]));
  for (const { kind, mistakes = [] } of rounds.flat()) {
    choices[kind]++;
    for (const mistake of mistakes) made[mistake] = (made[mistake] ?? 0) + 1;
  }
  return { choices, made: made as Record<MistakeCategory, number> };
}

function none(): Counted {
  return { any: 0, first: 0, second: 0 };
}

/** What the choice was a mistake of, or leaned to. */
function mistakesIn({ mistakes = [], leaning }: StoredChoice): readonly string[] {
  return leaning === undefined ? mistakes : [...mistakes, leaning];
}

/** Whether a choice was, or seemed to be, a mistake of this kind in this part. */
export function isMistakeIn(choice: StoredChoice, kind: MistakeCategory, part: ExchangePart): boolean {
  return isIn(part, choice.step) && mistakesIn(choice).includes(kind);
}

function isIn(part: ExchangePart, step: StoredChoice['step']): boolean {
  return part === 'any' || step.startsWith(part);
}

/** A flower kept can be given at each later pass: whoever passes flowers does so when they first can. */
function occasionOf(kind: MistakeCategory): Occasion {
  return kind === 'flower-given' ? 'first-flower' : choiceOfMistake(kind);
}

/** Of one kind of mistake in one part. */
export function countedIn(
  { offered, made }: MistakeCounts,
  kind: MistakeCategory,
  part: ExchangePart,
): { readonly made: number; readonly offered: number } {
  return { made: made[kind][part], offered: offered[occasionOf(kind)][part] };
}
