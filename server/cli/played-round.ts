// One round between four bots, with everything the command prints about it.
import {
  type Analyst,
  analyzeDecision,
  begin,
  chooseFor,
  createAnalyst,
  createRobustness,
  createSwarKernel,
  DEEP_BUDGET,
  decisionsIn,
  type Face,
  type Four,
  facesOf,
  finishRound,
  forFour,
  LEDGER_BATCHES,
  ledgerOf,
  NO_SIMD,
  openRound,
  type Review,
  type RobustnessOf,
  type Round,
  type RoundEvent,
  reviewRound,
  type Seat,
  type SeatRecord,
  type SimdModule,
  type StyleName,
  seatView,
  withDeepAnalysis,
  withLedger,
} from '../../shared-engine/index.ts';
import type { TableRequest } from './round-request.ts';

/** What `--json` prints. Racks and tiles to go are in seat order, as dealt and at the close. */
export interface PlayedRound {
  readonly seed: string;
  readonly commitment: string | null;
  readonly card: { readonly id: string; readonly name: string };
  readonly dealer: Seat;
  readonly seats: Four<StyleName>;
  readonly log: readonly RoundEvent[];
  readonly racks: BeforeAndAfter<readonly Face[]>;
  readonly toGo: BeforeAndAfter<number>;
  readonly reviews: Four<Review>;
}

interface BeforeAndAfter<T> {
  readonly before: Four<T>;
  readonly after: Four<T>;
}

/** Without the SIMD module the same round takes longer where deals are rolled out. `deep` plays every choice on. */
export function playedRound(
  { seed, dealer, seats, card, terms }: TableRequest,
  simd: SimdModule = NO_SIMD,
  deep = false,
): PlayedRound {
  const kernel = createSwarKernel(card);
  let analyst: Analyst | null = null;
  const analystOf = () => {
    analyst ??= createAnalyst(card, simd);
    return analyst;
  };
  const dealt = openRound({ seed, dealer }, terms);
  const start = begin(dealt);
  const { round, events } = finishRound(start, (view, random) =>
    chooseFor(seats[view.record.seat], view, kernel, random, analystOf),
  );
  const both = <T>(what: (round: Round, seat: Seat) => T): BeforeAndAfter<T> => ({
    before: forFour((seat) => what(start, seat)),
    after: forFour((seat) => what(round, seat)),
  });
  const robustnessOf = deep ? createRobustness(analystOf(), simd) : null;
  const reviews = forFour((seat) => {
    const { record } = seatView(round, seat);
    const review = reviewRound(record, kernel);
    return robustnessOf === null
      ? review
      : deepReview({ analyst: analystOf(), robustnessOf }, record, review);
  });
  return {
    seed,
    commitment: dealt.commitment,
    card: { id: card.id, name: card.name },
    dealer,
    seats,
    log: [dealt, ...events],
    racks: both(({ racks }, seat) => facesOf(racks[seat])),
    toGo: both(({ racks }, seat) => kernel.toGo(racks[seat])),
    reviews,
  };
}

interface DeepTools {
  readonly analyst: Analyst;
  readonly robustnessOf: RobustnessOf;
}

/** Every choice played on; one that was found costly also among neighbors of each style. */
function deepReview({ analyst, robustnessOf }: DeepTools, record: SeatRecord, review: Review): Review {
  const terms = { budget: DEEP_BUDGET };
  const judged = decisionsIn(record).reduce((known, { offered, subject }, nth) => {
    const analysis = analyzeDecision(analyst, record, nth, terms);
    if (analysis.verdict !== 'costly') return withDeepAnalysis(known, nth, analysis);
    const robustness = robustnessOf(offered, analysis.verdict, { ...terms, subject }) ?? undefined;
    return withDeepAnalysis(known, nth, { ...analysis, robustness });
  }, review);
  return withLedger(judged, ledgerOf(analyst, record, LEDGER_BATCHES.deep));
}
