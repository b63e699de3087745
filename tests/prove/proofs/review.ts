// The review: private, repeatable, true to its own numbers, and steadier than the loss it speaks up about.
import type { PassReview } from '../../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { nearness } from '../../../shared-engine/kernels/tiles-to-go/nearness.ts';
import { reviewSchema } from '../../../shared-engine/protocol/review.ts';
import { drawn, stream } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { addTo, bagOf, FULL_SET, facesOf, takeFrom } from '../../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { hiddenPair } from '../../kit/hidden-pair.ts';
import { numbersIn, numbersInText, shownAs } from '../../kit/numbers-in-text.ts';
import { houseKernel, passesOf, records, toldOf } from '../../kit/reviews.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const AMOUNTS: Record<Size, { readonly pairs: number; readonly rounds: number; readonly arrivals: number }> =
  {
    small: { pairs: 40, rounds: 40, arrivals: 300 },
    full: { pairs: 1_000, rounds: 400, arrivals: 2_000 },
  };

export const proof: Proof = {
  summary: 'Reviews know what their seat knew, repeat byte for byte, and say no number they do not hold.',
  async run({ seed, size }) {
    const { pairs, rounds, arrivals } = AMOUNTS[size];
    return [privacy(seed, pairs), ...sentences(seed, rounds), steadiness(seed, rounds, arrivals)];
  },
};

function privacy(seed: string, pairs: number): ProofRow {
  let same = 0;
  let tried = 0;
  for (let n = 0; tried < pairs; n++) {
    const me = SEATS[n % 4]!;
    const pair = hiddenPair(`${seed} hidden ${n}`, me);
    if (pair === null) continue;
    tried++;
    const [one, other] = pair.map((round) =>
      JSON.stringify(reviewRound(seatView(round, me).record, houseKernel)),
    );
    if (one === other) same++;
  }
  return {
    what: `of ${pairs} pairs of rounds with the same seat view, reviews byte-identical`,
    value: same,
    bar: `${pairs}`,
    ok: same === pairs,
  };
}

function sentences(seed: string, rounds: number): ProofRow[] {
  let said = 0;
  let held = 0;
  let parsed = 0;
  let repeated = 0;
  for (const record of records(`${seed} said`, rounds)) {
    const review = reviewRound(record, houseKernel);
    const sections = Object.values(review.sections);
    for (const [nth, choice] of review.choices.entries()) {
      const lost =
        choice.kind === 'pass' ? choice.sectionsInReach.length - choice.sectionsInReachAfter.length : 0;
      const known = shownAs([...numbersIn(choice), lost]);
      const numbers = numbersInText(toldOf(review, nth), sections);
      said += numbers.length;
      held += numbers.filter((number) => known.has(number)).length;
    }
    if (reviewSchema.safeParse(review).success) parsed++;
    if (JSON.stringify(reviewRound(record, houseKernel)) === JSON.stringify(review)) repeated++;
  }
  return [
    {
      what: 'numbers in sentences found in their choice',
      value: held,
      bar: `all ${said}`,
      ok: held === said,
    },
    { what: 'reviews that parse', value: parsed, bar: `${rounds}`, ok: parsed === rounds },
    { what: 'reviews repeated byte for byte', value: repeated, bar: `${rounds}`, ok: repeated === rounds },
  ];
}

/** The loss of first passes against one from many fresh arrivals, drawn here and not by the review. */
function steadiness(seed: string, rounds: number, arrivals: number): ProofRow {
  const misses = records(`${seed} steady`, rounds).map((record) => {
    const review = reviewRound(record, houseKernel);
    const [pass] = passesOf(review);
    return Math.abs(pass!.loss - longLoss(pass!, `${seed} ${record.start.join()}`, arrivals));
  });
  const mean = misses.reduce((sum, miss) => sum + miss, 0) / misses.length;
  const bar = 0.05;
  return {
    what: `mean miss of the loss of ${rounds} first passes against ${arrivals} fresh arrivals, in tiles`,
    value: Math.round(mean * 10_000) / 10_000,
    bar: `at most ${bar}, a fifth of the smallest loss spoken of`,
    ok: mean <= bar,
  };
}

function longLoss({ rack, best, played }: PassReview, seed: string, arrivals: number): number {
  const random = stream(seed, 'fresh arrivals');
  const hidden = facesOf(takeFrom(FULL_SET, rack)!).filter((face) => face !== 'joker');
  const worth = (tiles: readonly Face[], arrived: readonly Face[]): number =>
    nearness(houseKernel, addTo(takeFrom(bagOf(rack), tiles)!, arrived));
  let sum = 0;
  for (let n = 0; n < arrivals; n++) {
    const arrived = drawn(hidden, 3, random);
    sum += worth(best.tiles, arrived) - worth(played.tiles, arrived);
  }
  return sum / arrivals;
}
