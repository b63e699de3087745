// A review may depend on nothing but what its seat knew: hidden racks are exchanged and the bytes compared.
import { analyzeDecision, withDeepAnalysis } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import type { SeatRecord } from '../../../shared-engine/rules/view/record.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { hiddenPair } from '../../kit/hidden-pair.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { GLANCE } from '../analysis/budgets.ts';
import { analyst } from '../analysis/choices.ts';
import type { Proof } from '../proof.ts';

const PAIRS = { small: 4, full: 1_000 };

/** One pair in so many has every choice analyzed deeply as well. */
const EVERY = 6;

export const proof: Proof = {
  summary: 'Rounds that differ in hidden tiles alone give byte-identical reviews, deep analyses included.',
  async run({ seed, size }) {
    const pairs = PAIRS[size];
    let tried = 0;
    let same = 0;
    let choices = 0;
    let unlike = 0;
    for (let n = 0; tried < pairs; n++) {
      const me = SEATS[n % 4]!;
      const pair = hiddenPair(`${seed} leak ${n}`, me);
      if (pair === null) continue;
      tried++;
      const [one, other] = pair.map((round) => reviewed(seatView(round, me).record, tried % EVERY === 1)) as [
        string,
        string,
      ];
      if (one === other) same++;
      if (JSON.stringify(pair[0].racks) !== JSON.stringify(pair[1].racks)) unlike++;
      choices += one.split('"depth":"deep"').length - 1;
    }
    return [
      {
        what: `of ${pairs} pairs of rounds with the same seat view, reviews byte-identical`,
        value: same,
        bar: `${pairs}`,
        ok: same === pairs,
      },
      {
        what: 'pairs whose hidden racks really differ',
        value: unlike,
        bar: `${pairs}`,
        ok: unlike === pairs,
      },
      { what: 'choices analyzed deeply on either side', value: choices, bar: 'reported', ok: choices > 0 },
    ];
  },
};

function reviewed(record: SeatRecord, deeply: boolean): string {
  let review = reviewRound(record, houseKernel);
  if (!deeply) return JSON.stringify(review);
  for (const nth of review.choices.keys()) {
    review = withDeepAnalysis(review, nth, analyzeDecision(analyst, record, nth, { budget: GLANCE }));
  }
  return JSON.stringify(review);
}
