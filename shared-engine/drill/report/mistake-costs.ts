// What the kinds of mistakes cost a class, the costliest first.
import {
  MISTAKE_CATEGORIES,
  MISTAKE_CATEGORY_NAMES,
  type MistakeCategory,
  thousandth,
} from '../../analysis/index.ts';
import { mistakesWithAims } from './analyzed-choice.ts';
import { type ClassEntry, choicesBy } from './entry.ts';
import { sumOf } from './mean.ts';

export interface MistakeCost {
  readonly category: MistakeCategory;
  readonly label: string;
  readonly choices: number;
  /** Null in an anonymous class, where nobody can tell how many of the choices one player made. */
  readonly players: number | null;
  /** Sum of the losses in wins of 100 games; a choice with several categories counts under each of them. */
  readonly totalWinsLost: number;
}

/** One choice that was a mistake, with its loss in wins of 100 games. */
interface Mistake {
  readonly category: MistakeCategory;
  /** Place in the list of entries; null where that is not told. */
  readonly player: number | null;
  readonly loss: number;
}

/** Of the players' own choices, costliest category first. */
export function costliestMistakes(entries: readonly ClassEntry[]): readonly MistakeCost[] {
  return costsOf(
    entries.flatMap((entry, player) =>
      choicesBy(entry).flatMap(({ own, step, analyzed }) => {
        if (!own || analyzed === null) return [];
        const said = entry.aims.find((aim) => aim.step === step)?.sections ?? [];
        const loss = analyzed.loss?.value ?? 0;
        return mistakesWithAims(analyzed, said).map((category): Mistake => ({ category, player, loss }));
      }),
    ),
  );
}

/** Choices that several players made alike, with what each of them lost. */
export interface AlikeMistakes {
  readonly count: number;
  readonly loss: number;
  readonly mistakes: readonly MistakeCategory[];
}

/** Of an anonymous class: from the frozen counts alone. */
export function frozenMistakes(cells: readonly AlikeMistakes[]): readonly MistakeCost[] {
  return costsOf(
    cells.flatMap(({ count, loss, mistakes }) =>
      mistakes.flatMap((category) =>
        Array.from({ length: count }, (): Mistake => ({ category, player: null, loss })),
      ),
    ),
  );
}

function costsOf(mistakes: readonly Mistake[]): readonly MistakeCost[] {
  return MISTAKE_CATEGORY_NAMES.flatMap((category): MistakeCost[] => {
    const mine = mistakes.filter((one) => one.category === category);
    if (mine.length === 0) return [];
    const players = new Set(mine.map(({ player }) => player));
    return [
      {
        category,
        label: MISTAKE_CATEGORIES[category],
        choices: mine.length,
        players: players.has(null) ? null : players.size,
        totalWinsLost: thousandth(sumOf(mine.map(({ loss }) => loss))),
      },
    ];
  }).sort((a, b) => b.totalWinsLost - a.totalWinsLost);
}
