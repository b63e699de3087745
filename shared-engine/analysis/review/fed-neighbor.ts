// What one neighbor got from a seat over several passes: a part of the review that no single pass tells.
import { DIRECTIONS, MOVES } from '../../rules/index.ts';
import { thousandth } from '../comparison/estimate.ts';
import { SMALL_LOSS } from '../comparison/verdict.ts';
import { choicesMeant, helpsMore } from './choice-verdict.ts';
import type { ChoiceReview, FedNeighbor, PassReview } from './review.ts';

/**
 * Null where nobody was helped clearly, and until every pass has been played on. Only passes are counted of which it is
 * told that they help more than most, so that a reader finds each of them among the steps.
 */
export function fedNeighbor(choices: readonly ChoiceReview[]): FedNeighbor | null {
  const passes = choicesMeant(choices).filter((choice): choice is PassReview => choice.kind === 'pass');
  if (passes.some(({ analysis }) => analysis.depth === 'quick')) return null;
  const [most] = DIRECTIONS.map((toward): FedNeighbor => {
    const costs = passes.flatMap(({ step, analysis }) =>
      MOVES[step].toward === toward &&
      analysis.depth === 'deep' &&
      analysis.giveaway !== null &&
      helpsMore(analysis)
        ? [analysis.giveaway]
        : [],
    );
    const value = thousandth(costs.reduce((sum, cost) => sum + cost.value, 0));
    const squares = costs.reduce((sum, { halfWidth }) => sum + halfWidth * halfWidth, 0);
    return { toward, passes: costs.length, cost: { value, halfWidth: thousandth(Math.sqrt(squares)) } };
  })
    .filter(({ passes, cost }) => passes > 1 && cost.value > Math.max(SMALL_LOSS, cost.halfWidth))
    .sort((a, b) => b.cost.value - a.cost.value);
  return most ?? null;
}
