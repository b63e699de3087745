// Passes chosen by the review against the best-looking pass and a random one, in the same true deals.
import {
  type Analyst,
  alternativesTo,
  analyse,
  type Budget,
  createBelief,
  createChoiceModel,
  createDraws,
  createUses,
  FACE_COUNT,
  faceIndex,
  type Question,
  questionsIn,
  type RaceAlternative,
  RESULT_WIDTH,
  type Round,
  SEATS,
  type Seat,
  type SeatRecord,
  STEPS,
  seatView,
  WORLD_BYTES,
} from '../../../shared-engine/index.ts';
import { analyst, card, strongRound, vectors } from '../analysis/choices.ts';
import { differenceOf, differenceText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const DEALS: Record<Size, number> = { small: 6, full: 2_000 };

/** How often the rest of each exchange is played on, the simulated seats misjudging anew. */
const ENDINGS = 6;

/** A look that a whole table of deals can afford: 128 fresh worlds for six finalists. */
const BRIEF: Budget = {
  field: 24,
  rounds: [
    { batches: 2, stay: 10 },
    { batches: 4, stay: 6 },
  ],
  looks: [16],
};

const noIdea: Analyst = {
  ...analyst,
  belief: createBelief(createChoiceModel(createUses(vectors, card), 1e9)),
};

/** What each way to choose gives up is published, null or not. */
const WAYS = [
  'review',
  'screen alone',
  'no idea of hidden racks',
  'right after the pass',
  'best-looking',
  'random',
] as const;
type Way = (typeof WAYS)[number];

export const proof: Proof = {
  summary:
    'Passes chosen by the review leave a better outlook than the best-looking ones and than random ones.',
  async run({ seed, size }) {
    const lost = new Map<Way, number[]>(WAYS.map((way) => [way, []]));
    const bySeat = SEATS.map((): number[] => []);
    for (let deal = 0; deal < DEALS[size]; deal++) {
      const sums = new Map<Way, number>();
      const round = strongRound(`${seed} strength ${deal}`, deal);
      for (const seat of SEATS) {
        const reached = reachedBy(round, seat, deal);
        for (const [way, value] of reached) sums.set(way, (sums.get(way) ?? 0) + value / SEATS.length);
        bySeat[seat]!.push(reached.get('review')! - reached.get('best-looking')!);
      }
      for (const [way, value] of sums) lost.get(way)!.push(sums.get('review')! - value);
    }
    return [
      ...WAYS.slice(1).map((way) => rowAgainst(way, lost.get(way)!, size)),
      ...SEATS.map((seat) => ({
        what: `review minus best-looking at seat ${seat} alone, points of outlook`,
        value: differenceText(bySeat[seat]!),
        bar: 'reported',
        ok: true,
      })),
    ];
  },
};

/** The four seats of a deal make one number, so that the numbers are independent. */
function rowAgainst(way: Way, differences: readonly number[], size: Size): ProofRow {
  const held = way === 'best-looking' || way === 'random';
  const { low, high } = differenceOf(differences);
  // A few deals can only show that it is not worse.
  const small = size === 'small';
  return {
    what: `review minus ${way}, points of outlook a pass, paired by deal`,
    value: differenceText(differences),
    bar: held ? `99 % interval ${small ? 'not below' : 'above'} 0` : 'reported (ablation)',
    ok: !held || (small ? high >= 0 : low > 0),
  };
}

/** The true outlook at the close after each way to choose one pass; everything else is the same. */
function reachedBy(round: Round, seat: Seat, deal: number): ReadonlyMap<Way, number> {
  const { record } = seatView(round, seat);
  const passes = questionsIn(record).filter(
    ({ asked, offered }) => asked === 'tiles' && offered.situation.step < STEPS.indexOf('courtesy-ask'),
  );
  const question = passes[(deal + seat) % passes.length]!;
  const picks = [...picksFor(question, deal, seat)];
  const truth = racksBefore(round, question.offered.situation.past.length);
  const { situation } = question.offered;
  const acts = Int8Array.from(picks.flatMap(([, { act }]) => [...act]));
  const results = analyst.playouts.run({
    seed: 0x70_0d,
    seat: situation.seat,
    dealer: situation.dealer,
    step: situation.step,
    agreed: situation.agreed,
    count: ENDINGS,
    alternatives: picks.length,
    keys: Uint32Array.from({ length: ENDINGS }, (_, ending) => (deal * 4 + seat) * ENDINGS + ending),
    worlds: Uint8Array.from({ length: ENDINGS * truth.length }, (_, i) => truth[i % truth.length]!),
    acts: Int8Array.from({ length: ENDINGS * acts.length }, (_, i) => acts[i % acts.length]!),
  });
  const mean = (n: number): number => {
    let sum = 0;
    for (let e = 0; e < ENDINGS; e++) sum += results[(e * picks.length + n) * RESULT_WIDTH + seat]!;
    return sum / ENDINGS;
  };
  return new Map(picks.map(([way], n) => [way, mean(n)]));
}

function picksFor({ offered, asked }: Question, deal: number, seat: Seat): ReadonlyMap<Way, RaceAlternative> {
  const { alternatives } = alternativesTo(offered, asked, analyst.leaf)!;
  const { finalists } = analyse(analyst, offered, asked, BRIEF)!;
  const draws = createDraws(3, deal * 4 + seat);
  const picks = new Map<Way, RaceAlternative>([
    ['review', bestOf(finalists, ({ ahead }) => ahead.value)],
    ['screen alone', finalists[0]!.alternative],
    ['right after the pass', bestOf(finalists, ({ aheadAtOnce }) => aheadAtOnce.value)],
    ['best-looking', alternatives[0]!],
    ['random', alternatives[draws.below(alternatives.length)]!],
  ]);
  // A second analysis is dear; one deal in eight is enough to publish it.
  if (deal % 8 === 0) {
    const other = analyse(noIdea, offered, asked, BRIEF)!;
    picks.set(
      'no idea of hidden racks',
      bestOf(other.finalists, ({ ahead }) => ahead.value),
    );
  }
  return picks;
}

function bestOf<T extends { readonly alternative: RaceAlternative }>(
  finalists: readonly T[],
  worth: (finalist: T) => number,
): RaceAlternative {
  return finalists.reduce((best, other) => (worth(other) > worth(best) ? other : best)).alternative;
}

/** The four racks as they were after so many moves. */
function racksBefore(round: Round, moves: number): Uint8Array {
  const racks = new Uint8Array(WORLD_BYTES);
  for (const seat of SEATS) addRack(racks, seat, seatView(round, seat).record, moves);
  return racks;
}

function addRack(racks: Uint8Array, seat: Seat, { start, steps }: SeatRecord, moves: number): void {
  const at = (face: SeatRecord['start'][number]): number => seat * FACE_COUNT + faceIndex(face);
  for (const face of start) racks[at(face)]!++;
  for (const move of steps.filter((step) => step.kind === 'move').slice(0, moves)) {
    for (const face of move.gave) racks[at(face)]!--;
    for (const face of move.received) racks[at(face)]!++;
  }
}
