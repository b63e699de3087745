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
export function spreadRows({ choices, best }: Pick<StepSpread, 'choices' | 'best'>): readonly SpreadRow[] {
  const rows = choices.map(({ chosen, count, share, winsLost }): SpreadRow => {
    const isBest = best !== null && String(chosen) === String(best.chosen);
    return { chosen, count, share, cost: costOf({ winsLost }), isBest };
  });
  const lost = ({ isBest, cost }: SpreadRow) =>
    isBest ? Number.NEGATIVE_INFINITY : (cost?.value ?? Number.MAX_VALUE);
  return rows.sort((a, b) => lost(a) - lost(b) || b.count - a.count);
}
