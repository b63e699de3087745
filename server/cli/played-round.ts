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
  type Robustness,
  type Round,
  type RoundEvent,
  reviewRound,
  robustnessSentence,
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
  /** Of every choice told to be costly, whether it is that whoever the others are; none where nothing was played on. */
  readonly robustness: Four<readonly ToldRobustness[]>;
}

export interface ToldRobustness extends Robustness {
  /** Number of the choice in the review of its seat. */
  readonly nth: number;
  readonly sentence: string;
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
  const reviews = forFour((seat) => {
    const { record } = seatView(round, seat);
    const review = reviewRound(record, kernel);
    return deep ? deepReview(analystOf(), record, review) : review;
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
    robustness: deep ? robustnessOf(analystOf(), simd, reviews, round) : [[], [], [], []],
  };
}

function deepReview(analyst: Analyst, record: SeatRecord, review: Review): Review {
  const judged = review.choices.reduce((known, _, nth) => {
    const analysis = analyzeDecision(analyst, record, nth, { budget: DEEP_BUDGET });
    return withDeepAnalysis(known, nth, analysis);
  }, review);
  return withLedger(judged, ledgerOf(analyst, record, LEDGER_BATCHES.deep));
}

function robustnessOf(
  analyst: Analyst,
  simd: SimdModule,
  reviews: Four<Review>,
  round: Round,
): Four<readonly ToldRobustness[]> {
  const robustness = createRobustness(analyst, simd);
  return forFour((seat) => {
    const decisions = decisionsIn(seatView(round, seat).record);
    return reviews[seat].story.choices.flatMap(({ verdict }, nth) => {
      const decision = decisions[nth];
      if (verdict !== 'costly' || decision === undefined) return [];
      const { offered, subject } = decision;
      const found = robustness(offered, verdict, { subject, budget: DEEP_BUDGET });
      return found === null ? [] : [{ nth, ...found, sentence: robustnessSentence(found) }];
    });
  });
}
