// What is believed of hidden racks: better than no idea, right where the supposition is right, harmless where not.
import {
  BATCH,
  type Belief,
  choicesOf,
  createBelief,
  createChoiceModel,
  createDraws,
  createKernel,
  createUses,
  FACE_COUNT,
  faceIndex,
  JOKER_INDEX,
  SEATS,
  type Situation,
  seatView,
  WORLD_BYTES,
} from '../../../shared-engine/index.ts';
import { mixedRound } from '../../kit/reviews.ts';
import { card, vectors } from '../analysis/choices.ts';
import { modelRound } from '../analysis/model-rounds.ts';
import { differenceOf, differenceText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const SCORED: Record<Size, number> = { small: 8, full: 300 };
const RANKED: Record<Size, number> = { small: 30, full: 1_000 };
const SCORE_BATCHES: Record<Size, number> = { small: 24, full: 64 };

/** The believed share of a count is mixed with so many worlds of no idea: chances from few worlds are rough. */
const MIXED = 64;

/** One world of each of so many batches; the truth has one of 20 ranks among them. */
const RANKED_BATCHES = 19;
const BINS = 10;

/** Chi-square with 9 degrees of freedom, upper point for .001 (printed tables; from memory). */
const CRITICAL = 27.877;

const uses = createUses(vectors, card);
const belief = createBelief(createChoiceModel(uses));
/** Any pass as likely: knows what was given and received, and nothing of what giving says. */
const noIdea = createBelief(createChoiceModel(uses, 1e9));
const kernel = createKernel(card);

export const proof: Proof = {
  summary: 'Hidden racks are believed in as often as they turn out to be there.',
  async run({ seed, size }) {
    const key = createDraws(11, seed.length).below(1_000_000);
    return [...scores(seed, key, size), ...ranks(key, RANKED[size])];
  },
};

function scores(seed: string, key: number, size: Size): ProofRow[] {
  const count = SCORED[size];
  const supposed: number[] = [];
  const bots: number[] = [];
  for (let n = 0; n < count; n++) {
    const { situation, truth } = modelRound(key, n, 1 + (n % 6));
    supposed.push(gain(situation, truth, SCORE_BATCHES[size]));
    bots.push(botGain(`${seed} ${n}`, n, SCORE_BATCHES[size]));
  }
  const matched = differenceOf(supposed);
  const other = differenceOf(bots);
  return [
    {
      what: 'log-likelihood of the true hidden racks above no idea, seats that pass as supposed',
      value: differenceText(supposed),
      // Few deals can only show that it does no harm.
      bar: `99 % interval ${size === 'small' ? 'not below' : 'above'} 0`,
      ok: size === 'small' ? matched.high >= 0 : matched.low > 0,
    },
    {
      what: 'the same with seats that pass otherwise: strong, casual, guarded and careless ones',
      value: differenceText(bots),
      bar: 'degrades, does not break: 99 % interval not below 0',
      ok: other.high >= 0,
    },
  ];
}

/** Sum over hidden seats and faces of the log chance given to the true count, less the same without an idea. */
function gain(situation: Situation, truth: Uint8Array, batches: number): number {
  const believed = sharesOf(belief, situation, truth, batches);
  const without = sharesOf(noIdea, situation, truth, batches);
  const all = batches * BATCH;
  return believed.reduce((sum, share, n) => {
    // Half a world beside, so that a count never met is unlikely and not impossible.
    const rough = (without[n]! * all + 0.5) / (all + 1);
    return sum + Math.log((share * all + MIXED * rough) / (all + MIXED)) - Math.log(rough);
  }, 0);
}

/** For each hidden seat and face the share of worlds that have the true count. */
function sharesOf(source: Belief, situation: Situation, truth: Uint8Array, batches: number): number[] {
  const worlds = source.worlds(situation, 1, 0, batches);
  const count = batches * BATCH;
  return SEATS.filter((seat) => seat !== situation.seat).flatMap((seat) =>
    Array.from({ length: FACE_COUNT }, (_, face) => {
      const at = seat * FACE_COUNT + face;
      let same = 0;
      for (let w = 0; w < count; w++) if (worlds[w * WORLD_BYTES + at] === truth[at]) same++;
      return same / count;
    }),
  );
}

/** A choice of a round of bots, with the racks as they really were. */
function botGain(name: string, n: number, batches: number): number {
  const { round } = mixedRound(`${name} believed`);
  const me = SEATS[n % 4]!;
  const choices = choicesOf(seatView(round, me).record);
  const { situation } = choices[1 + (n % (choices.length - 1))]!;
  const racks = new Uint8Array(WORLD_BYTES);
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

type Measure = (racks: Uint8Array) => number;

/** Seat 0 believes; 1 sits to its right. */
const MEASURES: Readonly<Record<string, Measure>> = {
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
  const bins = new Map(Object.keys(MEASURES).map((name) => [name, new Array<number>(BINS).fill(0)]));
  for (let n = 0; n < count; n++) {
    const { situation, truth } = modelRound(key + 1, n, 1 + (n % 6));
    const worlds = belief.worlds(situation, n, 0, RANKED_BATCHES);
    const ties = createDraws(key + 2, n);
    for (const [name, measure] of Object.entries(MEASURES)) {
      const value = measure(truth);
      const others = Array.from({ length: RANKED_BATCHES }, (_, b) =>
        measure(worlds.subarray(b * BATCH * WORLD_BYTES, (b * BATCH + 1) * WORLD_BYTES)),
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
      what: `rank of the truth among ${RANKED_BATCHES} believed worlds, ${name}: chi-square of ${hits.join(' ')}`,
      value: Math.round(square * 100) / 100,
      bar: `p > .001: below ${CRITICAL} (9 degrees of freedom)`,
      ok: square < CRITICAL,
    };
  });
}
