// The choices of a step in the order in which they are read: the best first.
import type { StepSpread } from '../../../shared-engine/index.ts';
import { type CostFigure, costOf } from './cost.ts';

type Choice = StepSpread['choices'][number];

export interface SpreadRow extends Pick<Choice, 'chosen' | 'count' | 'share'> {
  /** Null where nothing is known. */
  readonly cost: CostFigure | null;
  readonly isBest: boolean;
}

/** The best that was found, then what cost least, then what most chose. */
function spreadRows({ choices, best }: Pick<StepSpread, 'choices' | 'best'>): readonly SpreadRow[] {
  const rows = choices.map(({ chosen, count, share, winsLost }): SpreadRow => {
    const isBest = best !== null && String(chosen) === String(best.chosen);
    return { chosen, count, share, cost: costOf({ winsLost }), isBest };
  });
  const lost = ({ isBest, cost }: SpreadRow) =>
    isBest ? Number.NEGATIVE_INFINITY : (cost?.value ?? Number.MAX_VALUE);
  return rows.sort((a, b) => lost(a) - lost(b) || b.count - a.count);
}

type Told = Pick<StepSpread, 'choices' | 'best' | 'hidden' | 'advancedWith'>;

/**
 * The rows that there is room for, and the others, of which a sentence tells in the place of the last row. What is said
 * below the rows of a guided deal of an anonymous class takes the place of one row more.
 */
export function rowsWithin(spread: Told, maxRows: number) {
  const rows = spreadRows(spread);
  const isLong = spread.hidden !== undefined && spread.advancedWith !== undefined;
  const most = Math.max(1, maxRows - (isLong ? 1 : 0));
  const shown = rows.length > most ? rows.slice(0, Math.max(1, most - 1)) : rows;
  return { shown, others: rows.slice(shown.length) };
}
