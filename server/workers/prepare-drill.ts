// Prepares the deals of a drill file, or reports every problem found in it.
import {
  type DrillProblem,
  forFour,
  type Kernel,
  type PreparedDeal,
  parseDrill,
  prepareDeal,
  SEATS,
  type Seat,
} from '../../shared-engine/index.ts';
import type { PreparedDrill } from '../ports.ts';

/** After so many deals that could not be prepared the others are not tried: each may cost half a second. */
const MAX_PROBLEMS = 3;

/**
 * The deals of a drill file, each rotated so that the seat it was made for is seat 0. May take seconds where
 * constraints are hard to meet; the same drill and card always give the same.
 */
export function prepareDrill(json: unknown, kernel: Kernel): PreparedDrill {
  const parsed = parseDrill(json, kernel);
  if (!parsed.ok) return parsed;
  const { drill } = parsed;
  const deals: PreparedDeal[] = [];
  const problems: DrillProblem[] = [];
  for (const deal of drill.deals) {
    if (problems.length >= MAX_PROBLEMS) break;
    const prepared = prepareDeal(drill, deal, kernel);
    if (prepared.ok) deals.push(rotated(prepared.deal, deal.seat));
    else problems.push(prepared.problem);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, drill, deals };
}

function rotated({ seed, dealer, prepared }: PreparedDeal, from: Seat): PreparedDeal {
  const at = (seat: Seat, by: number): Seat => SEATS[(seat + by) % SEATS.length]!;
  return {
    seed,
    dealer: at(dealer, SEATS.length - from),
    prepared: forFour((seat) => prepared[at(seat, from)]),
  };
}
