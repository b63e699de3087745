// A drill's deal turned round the table until the seat it was made for is seat 0, where every pupil sits.
import {
  botsAround,
  type Drill,
  type DrillProblem,
  type Four,
  forFour,
  type Kernel,
  type PreparedDeal,
  prepareDeal,
  SEATS,
  type Seat,
  type StyleName,
} from '../../shared-engine/index.ts';

export type PreparedDrill =
  | { readonly ok: true; readonly deals: readonly PreparedDeal[] }
  | { readonly ok: false; readonly problems: readonly DrillProblem[] };

/** Deals all of a drill, one after the other; `pause` lets others have their turn in between. */
export async function prepareDrill(
  drill: Drill,
  kernel: Kernel,
  pause: () => Promise<void>,
): Promise<PreparedDrill> {
  const deals: PreparedDeal[] = [];
  const problems: DrillProblem[] = [];
  for (const deal of drill.deals) {
    await pause();
    const prepared = prepareDeal(drill, deal, kernel);
    if (prepared.ok) deals.push(turned(prepared.deal, deal.seat));
    else problems.push(prepared.problem);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, deals };
}

function turned({ seed, dealer, prepared }: PreparedDeal, from: Seat): PreparedDeal {
  const at = (seat: Seat, by: number): Seat => SEATS[(seat + by) % SEATS.length]!;
  return {
    seed,
    dealer: at(dealer, SEATS.length - from),
    prepared: forFour((seat) => prepared[at(seat, from)]),
  };
}

/** The bots at every table of the class; a pupil at one of these seats takes the bot's place. */
export function botsOf({ bots }: Drill): Four<StyleName | null> {
  return botsAround(0, bots);
}
