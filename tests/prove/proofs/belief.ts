// What belief says of hidden racks: better than no evidence, right where its model of others is right, harmless where not.
import { type Belief, createBelief } from '../../../shared-engine/analysis/belief/belief.ts';
import { DEALS_PER_BATCH } from '../../../shared-engine/analysis/belief/particle-filter.ts';
import { offeredChoices, type Situation } from '../../../shared-engine/analysis/belief/situation.ts';
import { DEAL_BYTES } from '../../../shared-engine/analysis/rollouts/batch.ts';
import { createRng } from '../../../shared-engine/kernels/philox.ts';
import { createTileValues } from '../../../shared-engine/kernels/tile-value/simd.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { createChoiceModel } from '../../../shared-engine/policy/choice-model.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { FACE_COUNT, faceIndex, JOKER_INDEX } from '../../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { mixedRound } from '../../kit/reviews.ts';
import { card, simd } from '../analysis/choices.ts';
import { modelRound } from '../analysis/model-rounds.ts';
import { differenceOf, differenceText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { keyOf } from '../seeds.ts';

const SCORED: Record<Size, number> = { small: 3, full: 1_500 };
/** At least six expected in each bin, so that chi-square means what it says. */
const RANKED: Record<Size, number> = { small: 60, full: 1_000 };
const SCORE_BATCHES: Record<Size, number> = { small: 24, full: 64 };

/** The share of a count is mixed with so many deals without evidence: shares of few deals are rough. */
const MIXED = 64;

/** One deal of each of so many batches; the truth has one of 20 ranks among them. */
const RANKED_BATCHES = 19;
const BINS = 10;

/** Chi-square with 9 degrees of freedom, upper point for .001 (printed tables; from memory). */
const CRITICAL = 27.877;

const tileValues = createTileValues(simd, card);
const belief = createBelief(createChoiceModel(tileValues));
/** Any pass as likely: uses what was given and received, and nothing that passes tell. */
const noEvidence = createBelief(createChoiceModel(tileValues, 1e9));
const kernel = createSwarKernel(card);

export const proof: Proof = {
  summary: 'Belief gives hidden racks the probabilities with which they turn out to be there.',
  async run({ seed, size }) {
    const key = keyOf(seed);
    return [...scores(seed, key, size), ...ranks(key, RANKED[size])];
  },
};

function scores(seed: string, key: number, size: Size): ProofRow[] {
  const count = SCORED[size];
  const asModeled: number[] = [];
  const bots: number[] = [];
  for (let n = 0; n < count; n++) {
    const { situation, truth } = modelRound(key, n, 1 + (n % 6));
    asModeled.push(gain(situation, truth, SCORE_BATCHES[size]));
    bots.push(botGain(`${seed} ${n}`, n, SCORE_BATCHES[size]));
  }
  const matched = differenceOf(asModeled);
  const other = differenceOf(bots);
  return [
    {
      what: 'log-likelihood of the true hidden racks above no evidence, seats that pass as modeled',
      value: differenceText(asModeled),
      // Few deals can only show that it does no harm.
      bar: `99 % interval ${size === 'small' ? 'not below' : 'above'} 0`,
      ok: size === 'small' ? matched.high >= 0 : matched.low > 0,
    },
    {
      what: 'the same with seats that pass otherwise: strong, casual, guarded and random ones',
      value: differenceText(bots),
      bar: 'not harmful: 99 % interval not below 0',
      ok: other.high >= 0,
    },
  ];
}

/** Sum over hidden seats and faces of the log probability of the true count, less the same without evidence. */
function gain(situation: Situation, truth: Uint8Array, batches: number): number {
  const believed = sharesOf(belief, situation, truth, batches);
  const without = sharesOf(noEvidence, situation, truth, batches);
  const all = batches * DEALS_PER_BATCH;
  return believed.reduce((sum, share, n) => {
    // Half a deal more, so that a count never met is unlikely and not impossible.
    const rough = (without[n]! * all + 0.5) / (all + 1);
    return sum + Math.log((share * all + MIXED * rough) / (all + MIXED)) - Math.log(rough);
  }, 0);
}

/** For each hidden seat and face the share of deals that have the true count. */
function sharesOf(source: Belief, situation: Situation, truth: Uint8Array, batches: number): number[] {
  const deals = source.sampledDeals(situation, 1, { first: 0, batches });
  const count = batches * DEALS_PER_BATCH;
  return SEATS.filter((seat) => seat !== situation.seat).flatMap((seat) =>
    Array.from({ length: FACE_COUNT }, (_, face) => {
      const at = seat * FACE_COUNT + face;
      let same = 0;
      for (let n = 0; n < count; n++) if (deals[n * DEAL_BYTES + at] === truth[at]) same++;
      return same / count;
    }),
  );
}

/** A choice of a round of bots, with the racks as they really were. */
function botGain(name: string, n: number, batches: number): number {
  const { round } = mixedRound(`${name} believed`);
  const me = SEATS[n % 4]!;
  const choices = offeredChoices(seatView(round, me).record);
  const { situation } = choices[1 + (n % (choices.length - 1))]!;
  const racks = new Uint8Array(DEAL_BYTES);
  for (const seat of SEATS) {
    const { record } = seatView(round, seat);
    for (const face of record.start) racks[seat * FACE_COUNT + faceIndex(face)]!++;
    for (const move of record.steps.filter((step) => step.kind === 'move').slice(0, situation.past.length)) {
      for (const face of move.gave) racks[seat * FACE_COUNT + faceIndex(face)]!--;
      for (const face of move.received) racks[seat * FACE_COUNT + faceIndex(face)]!++;
    }
  }
  return gain(situation, racks, batches);
}

type Statistic = (racks: Uint8Array) => number;

/** Seat 0 believes; 1 sits to its right. */
const STATISTICS: Readonly<Record<string, Statistic>> = {
  'tiles to go of the seat to the right': (racks) => toGoOf(racks, 1),
  'tiles to go of the seat across': (racks) => toGoOf(racks, 2),
  'tiles to go of the seat to the left': (racks) => toGoOf(racks, 3),
  'jokers of the seat to the right': (racks) => racks[FACE_COUNT + JOKER_INDEX]!,
  'pairs of the seat across': (racks) =>
    racks.subarray(2 * FACE_COUNT, 2 * FACE_COUNT + JOKER_INDEX).filter((count) => count >= 2).length,
};

function toGoOf(racks: Uint8Array, seat: number): number {
  return kernel.toGo([...racks.subarray(seat * FACE_COUNT, (seat + 1) * FACE_COUNT)]);
}

function ranks(key: number, count: number): ProofRow[] {
  const bins = new Map(Object.keys(STATISTICS).map((name) => [name, new Array<number>(BINS).fill(0)]));
  for (let n = 0; n < count; n++) {
    const { situation, truth } = modelRound(key + 1, n, 1 + (n % 6));
    const deals = belief.sampledDeals(situation, n, { first: 0, batches: RANKED_BATCHES });
    const ties = createRng(key + 2, n);
    for (const [name, statistic] of Object.entries(STATISTICS)) {
      const value = statistic(truth);
      const others = Array.from({ length: RANKED_BATCHES }, (_, b) =>
        statistic(deals.subarray(b * DEALS_PER_BATCH * DEAL_BYTES, (b * DEALS_PER_BATCH + 1) * DEAL_BYTES)),
      );
      const below = others.filter((other) => other < value).length;
      const equal = others.filter((other) => other === value).length;
      const rank = below + ties.below(equal + 1);
      bins.get(name)![Math.floor((rank * BINS) / (RANKED_BATCHES + 1))]!++;
    }
  }
  return [...bins].map(([name, hits]) => {
    const expected = count / BINS;
    const square = hits.reduce((sum, hit) => sum + (hit - expected) ** 2 / expected, 0);
    return {
      what: `rank of the truth among ${RANKED_BATCHES} sampled deals, ${name}: chi-square of ${hits.join(' ')}`,
      value: Math.round(square * 100) / 100,
      bar: `p > .001: below ${CRITICAL} (9 degrees of freedom)`,
      ok: square < CRITICAL,
    };
  });
}
