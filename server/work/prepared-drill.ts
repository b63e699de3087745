// From what somebody sent as a drill to deals that can be dealt, turned so that the seat each was made for is seat 0.
import {
  type Drill,
  type DrillProblem,
  forFour,
  type Kernel,
  type PreparedDeal,
  parseDrill,
  prepareDeal,
  SEATS,
  type Seat,
} from '../../shared-engine/index.ts';

export type PreparedDrill =
  | { readonly ok: true; readonly drill: Drill; readonly deals: readonly PreparedDeal[] }
  | { readonly ok: false; readonly problems: readonly DrillProblem[] };

/** Deals that could not be made before the others are left alone: a wish too rare to find costs half a second. */
const MOST_PROBLEMS = 3;

/** May take seconds where wishes are hard; the same drill and card always give the same. */
export function prepareDrill(json: unknown, kernel: Kernel): PreparedDrill {
  const parsed = parseDrill(json, kernel);
  if (!parsed.ok) return parsed;
  const { drill } = parsed;
  const deals: PreparedDeal[] = [];
  const problems: DrillProblem[] = [];
  for (const deal of drill.deals) {
    if (problems.length >= MOST_PROBLEMS) break;
    const prepared = prepareDeal(drill, deal, kernel);
    if (prepared.ok) deals.push(turned(prepared.deal, deal.seat));
    else problems.push(prepared.problem);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, drill, deals };
}

function turned({ seed, dealer, prepared }: PreparedDeal, from: Seat): PreparedDeal {
  const at = (seat: Seat, by: number): Seat => SEATS[(seat + by) % SEATS.length]!;
  return {
    seed,
    dealer: at(dealer, SEATS.length - from),
    prepared: forFour((seat) => prepared[at(seat, from)]),
  };
}
