// What drawing racks may cost: counted in work, not in time, so that the same drill ends the same way on every machine.
import type { Kernel } from '../kernels/index.ts';

/** For one deal: drawing a rack costs 1, measuring it on a card of the house card's size 12 more. */
export const DEAL_BUDGET = 600_000;
/** For all deals of a drill together: ten that are as hard as one may be, or sixty that are a sixth as hard. */
export const DRILL_BUDGET = 10 * DEAL_BUDGET;

const CARD_COST = 12;
/** Measuring takes longer the more hands a card has; up to so many it costs the same. */
const HANDS = 1_200;

/** Several searches may share one. */
export interface SearchBudget {
  /** Takes so much of what is left; false where that was not enough. */
  spend(cost: number): boolean;
  readonly spent: number;
}

export function searchBudget(most: number): SearchBudget {
  let spent = 0;
  return {
    spend(cost) {
      spent += cost;
      return spent <= most;
    },
    get spent() {
      return spent;
    },
  };
}

/** What measuring one rack on this card costs. */
export function measureCost({ card }: Kernel): number {
  return Math.ceil(CARD_COST * Math.max(1, card.hands.length / HANDS));
}
