// What the kinds of mistakes cost a class, the costliest first.
import {
  MISTAKE_CATEGORIES,
  MISTAKE_CATEGORY_NAMES,
  type MistakeCategory,
  mistakesOf,
  thousandth,
} from '../../analysis/index.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean, sumOf } from './mean.ts';

export interface MistakeCost {
  readonly category: MistakeCategory;
  readonly label: string;
  readonly choices: number;
  /** Null in an anonymous class, where nobody can tell how many of the choices one player made. */
  readonly players: number | null;
  /** Sum of the losses in tiles; a choice with several categories counts under each of them. */
  readonly total: number;
  readonly loss: ClassMean;
  /** Sum of the losses in wins of 100 games, once each choice has its deep analysis. */
  readonly totalWinsLost: number | null;
}

/** Of the players' own choices, costliest category first: by wins lost where all have them, otherwise by tiles. */
export function costliestMistakes(entries: readonly ClassEntry[]): readonly MistakeCost[] {
  const found = entries.flatMap(({ review, aims }, player) =>
    (review?.choices ?? [])
      .filter(({ by }) => by === 'player')
      .flatMap((choice) => {
        const said = aims.find(({ step }) => step === choice.step)?.sections;
        return mistakesOf(choice, said).map((category) => ({ category, player, choice }));
      }),
  );
  const costs = MISTAKE_CATEGORY_NAMES.flatMap((category): MistakeCost[] => {
    const mine = found.filter((one) => one.category === category);
    const losses = mine.map(({ choice }) => choice.loss);
    const loss = classMean(losses);
    if (loss === null) return [];
    const total = thousandth(sumOf(losses));
    const players = new Set(mine.map(({ player }) => player)).size;
    const points = mine.flatMap(({ choice: { analysis } }) =>
      analysis.depth === 'deep' && analysis.loss ? [analysis.loss.value] : [],
    );
    const totalWinsLost = points.length === mine.length ? thousandth(sumOf(points)) : null;
    return [
      {
        category,
        label: MISTAKE_CATEGORIES[category],
        choices: mine.length,
        players,
        total,
        loss,
        totalWinsLost,
      },
    ];
  });
  return costliestFirst(costs);
}

function costliestFirst(costs: MistakeCost[]): readonly MistakeCost[] {
  const inPoints = costs.every(({ totalWinsLost }) => totalWinsLost !== null);
  const cost = ({ total, totalWinsLost }: MistakeCost): number => (inPoints ? totalWinsLost! : total);
  return costs.sort((a, b) => cost(b) - cost(a));
}

/** Choices that several players made alike, with what the choice cost each of them; null where that is not told. */
interface AlikeChoices {
  readonly count: number;
  readonly loss: number | null;
  readonly mistakes: readonly MistakeCategory[];
}

/** Of an anonymous class: from the frozen counts alone. */
export function frozenMistakes(
  spreads: readonly { readonly cells: readonly AlikeChoices[] }[],
): readonly MistakeCost[] {
  const cells = spreads.flatMap((spread) => spread.cells);
  return costliestFirst(
    MISTAKE_CATEGORY_NAMES.flatMap((category): MistakeCost[] => {
      const losses = cells
        .filter(({ mistakes }) => mistakes.includes(category))
        .flatMap(({ count, loss: each }) => (each === null ? [] : Array.from({ length: count }, () => each)));
      const loss = classMean(losses);
      if (loss === null) return [];
      const sums = { total: thousandth(sumOf(losses)), totalWinsLost: null };
      const label = MISTAKE_CATEGORIES[category];
      return [{ category, label, choices: losses.length, players: null, loss, ...sums }];
    }),
  );
}
