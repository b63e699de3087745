// Prepares the deals of a drill file in parts, so that other work goes between them, or reports what is wrong with it.
import {
  DRILL_BUDGET,
  type Drill,
  type DrillProblem,
  forFour,
  type Kernel,
  type PreparedDeal,
  parseDrill,
  prepareDeal,
  SEATS,
  type SearchBudget,
  type Seat,
  searchBudget,
} from '../../shared-engine/index.ts';
import type { PreparedDrill } from '../work-ports.ts';

/** After so many deals that could not be prepared the others are not tried: each may cost half a second. */
const MAX_PROBLEMS = 3;

/** What the racks of one part may cost, in the units of the budget: a fifth of a second, or one deal where that costs more. */
const PART_COST = 200_000;

/** A drill on its way. */
export interface DrillPart {
  readonly drill: Drill;
  /** Prepared so far, in the order of the drill. */
  readonly deals: readonly PreparedDeal[];
  readonly problems: readonly DrillProblem[];
  /** What all deals so far have cost. */
  readonly spent: number;
}

export type DrillStep =
  | { readonly isDone: true; readonly prepared: PreparedDrill }
  | { readonly isDone: false; readonly part: DrillPart };

/**
 * The first part of a drill as it was sent. The deals come out rotated so that the seat each was made for is seat 0; the
 * same drill and card always give the same. Throws where `isStopped`, which is asked between racks.
 */
export function beginDrill(json: unknown, kernel: Kernel, isStopped: () => boolean): DrillStep {
  const parsed = parseDrill(json, kernel);
  if (!parsed.ok) return { isDone: true, prepared: parsed };
  return continueDrill({ drill: parsed.drill, deals: [], problems: [], spent: 0 }, kernel, isStopped);
}

export function continueDrill(part: DrillPart, kernel: Kernel, isStopped: () => boolean): DrillStep {
  const { drill } = part;
  const deals = [...part.deals];
  const problems = [...part.problems];
  const budget = stoppable(searchBudget(DRILL_BUDGET - part.spent), isStopped);
  while (problems.length < MAX_PROBLEMS && budget.spent < PART_COST) {
    const deal = drill.deals[deals.length + problems.length];
    if (deal === undefined) break;
    const prepared = prepareDeal(drill, deal, kernel, budget);
    if (prepared.ok) deals.push(rotated(prepared.deal, deal.seat));
    else problems.push(prepared.problem);
    // Whatever comes after it would find nothing left.
    if (!prepared.ok && prepared.problem.code === 'used-up')
      return { isDone: true, prepared: { ok: false, problems } };
  }
  const isDone = problems.length >= MAX_PROBLEMS || deals.length + problems.length === drill.deals.length;
  if (!isDone) return { isDone, part: { drill, deals, problems, spent: part.spent + budget.spent } };
  return { isDone, prepared: problems.length > 0 ? { ok: false, problems } : { ok: true, drill, deals } };
}

/** A drill that nobody waits for any more ends before the next rack. */
function stoppable(budget: SearchBudget, isStopped: () => boolean): SearchBudget {
  return {
    spend(cost) {
      if (isStopped()) throw new Error('The task was stopped.');
      return budget.spend(cost);
    },
    get spent() {
      return budget.spent;
    },
  };
}

function rotated({ seed, dealer, prepared }: PreparedDeal, from: Seat): PreparedDeal {
  const at = (seat: Seat, by: number): Seat => SEATS[(seat + by) % SEATS.length]!;
  return {
    seed,
    dealer: at(dealer, SEATS.length - from),
    prepared: forFour((seat) => prepared[at(seat, from)]),
  };
}
