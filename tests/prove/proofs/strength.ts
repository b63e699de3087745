// Passes chosen by the review against the best-looking pass and a random one, in the same deals.
import { createBelief } from '../../../shared-engine/analysis/belief/belief.ts';
import type { OfferedChoice } from '../../../shared-engine/analysis/belief/situation.ts';
import { type Alternative, alternativesTo } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import {
  type Analyst,
  analyze,
  dealsFor,
  seedsFor,
} from '../../../shared-engine/analysis/comparison/analyze.ts';
import type { ComparisonBudget } from '../../../shared-engine/analysis/comparison/budget.ts';
import type { ComparedAlternative } from '../../../shared-engine/analysis/comparison/comparison.ts';
import { meanOf } from '../../../shared-engine/analysis/comparison/estimate.ts';
import { always, column } from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import { preparePlayCard } from '../../../shared-engine/analysis/play/play-card.ts';
import { createSimulator } from '../../../shared-engine/analysis/play/simulate.ts';
import type { RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { createRng } from '../../../shared-engine/kernels/philox.ts';
import { createTileValues } from '../../../shared-engine/kernels/tile-value/simd.ts';
import { createChoiceModel } from '../../../shared-engine/policy/choice-model.ts';
import { shuffled, stream } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../../shared-engine/rules/deal/seat.ts';
import type { Round } from '../../../shared-engine/rules/exchange/round.ts';
import { analyst, card, roundOf, simd } from '../analysis/choices.ts';
import { seatEnd } from '../analysis/one-seat.ts';
import { differenceOf, differenceText } from '../analysis/proportions.ts';
import { passOf, worthInTrueDeal } from '../analysis/true-deal.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const DEALS: Record<Size, number> = { small: 3, full: 2_000 };

/** Deals in which a bot that goes by the distilled policy takes the seat of a strong one, games played of each, the bar. */
const SEATED: Record<Size, number> = { small: 4, full: 6_000 };
const PLAYS = 2;
const LEAST_GAIN = 1.5;

/** An analysis that is cheap enough for many deals: 128 fresh deals for six finalists. */
const BRIEF: ComparisonBudget = {
  firstBatches: 1,
  candidates: 24,
  rounds: [
    { batches: 2, survivors: 10 },
    { batches: 4, survivors: 6 },
  ],
  fresh: { least: 16, most: 16 },
};

const noEvidence: Analyst = {
  ...analyst,
  belief: createBelief(createChoiceModel(createTileValues(simd, card), 1e9)),
};

/** What each way to choose loses is published, whether it is anything or not. */
const WAYS = [
  'review',
  'screening alone',
  'no evidence on hidden racks',
  'right after the pass',
  'best-looking',
  'random',
] as const;
type Way = (typeof WAYS)[number];

export const proof: Proof = {
  summary: 'Passes chosen by the review win more games than the best-looking ones and than random ones.',
  async run({ seed, size }) {
    const lost = new Map<Way, number[]>(WAYS.map((way) => [way, []]));
    const bySeat = SEATS.map((): number[] => []);
    for (let deal = 0; deal < DEALS[size]; deal++) {
      const sums = new Map<Way, number>();
      const round = roundOf('strong', `${seed} strength ${deal}`, deal);
      for (const seat of SEATS) {
        const reached = reachedBy(round, seat, deal);
        for (const [way, value] of reached) sums.set(way, (sums.get(way) ?? 0) + value / SEATS.length);
        bySeat[seat]!.push(reached.get('review')! - reached.get('best-looking')!);
      }
      for (const [way, value] of sums) lost.get(way)!.push(sums.get('review')! - value);
    }
    return [
      ...steadyRows(seed, size),
      ...WAYS.slice(1).map((way) => rowAgainst(way, lost.get(way)!, size)),
      ...SEATS.map((seat) => ({
        what: `review minus best-looking at seat ${seat} alone, wins in 100 games`,
        value: differenceText(bySeat[seat]!),
        bar: 'reported',
        ok: true,
      })),
    ];
  },
};

/** What the policy that rollouts play on with gains a seat as a bot, by the value of the close and in games played out. */
function steadyRows(seed: string, size: Size): readonly ProofRow[] {
  const simulate = createSimulator(preparePlayCard(card));
  const gains: number[] = [];
  const won: number[] = [];
  for (let deal = 0; deal < SEATED[size]; deal++) {
    const [steady, strong] = (['steady', 'strong'] as const).map((style) => {
      const { seat, table, winProbability } = seatEnd(style, `${seed}/steady`, deal);
      let wins = 0;
      for (let play = 0; play < PLAYS; play++) {
        const chance = stream(`${seed}/steady/${deal}`, `play ${play}`);
        const { winner } = simulate({ ...table, wall: shuffled(table.wall, chance) }, chance);
        if (winner === seat) wins++;
      }
      return { winProbability, won: (100 * wins) / PLAYS };
    });
    gains.push(steady!.winProbability - strong!.winProbability);
    won.push(steady!.won - strong!.won);
  }
  const what =
    'steady bot minus strong bot in its seat among three strong ones, wins in 100 games, paired by deal';
  const { mean, low, high } = differenceOf(gains);
  const small = size === 'small';
  return [
    {
      what: `${what}, by the chances at the close`,
      value: differenceText(gains),
      bar: small ? '99 % interval not below 0' : `at least ${LEAST_GAIN}, 99 % interval above 0`,
      ok: small ? high >= 0 : mean >= LEAST_GAIN && low > 0,
    },
    {
      what: `${what}, in games played out to a winner`,
      value: differenceText(won),
      bar: small ? '99 % interval not below 0' : '99 % interval above 0',
      ok: small ? differenceOf(won).high >= 0 : differenceOf(won).low > 0,
    },
  ];
}

/** The four seats of a deal make one number, so that the numbers are independent. */
function rowAgainst(way: Way, differences: readonly number[], size: Size): ProofRow {
  const held = way === 'best-looking' || way === 'random';
  const { low, high } = differenceOf(differences);
  // A few deals can only show that it is not worse.
  const small = size === 'small';
  return {
    what: `review minus ${way}, wins in 100 games a pass, paired by deal`,
    value: differenceText(differences),
    bar: held ? `99 % interval ${small ? 'not below' : 'above'} 0` : 'reported (ablation)',
    ok: !held || (small ? high >= 0 : low > 0),
  };
}

/** The win probability at the close of the true deal after each way to choose one pass. */
function reachedBy(round: Round, seat: Seat, deal: number): ReadonlyMap<Way, number> {
  const decision = passOf(round, seat, deal + seat);
  const picks = [...picksFor(decision, deal, seat)];
  const passes = picks.map(([, pass]) => pass);
  const worth = worthInTrueDeal(round, decision, passes, deal);
  return new Map(picks.map(([way], n) => [way, worth[n]!]));
}

function picksFor(
  { offered, subject }: RecordedDecision,
  deal: number,
  seat: Seat,
): ReadonlyMap<Way, Alternative> {
  const { alternatives } = alternativesTo(offered, subject, analyst.leaf)!;
  const { finalists } = analyze(analyst, offered, { subject, budget: BRIEF })!;
  const rng = createRng(3, deal * 4 + seat);
  const picks = new Map<Way, Alternative>([
    ['review', bestOf(finalists, ({ difference }) => difference.value)],
    ['screening alone', finalists[0]!.alternative],
    ['right after the pass', bestOf(finalists, rightAfter(offered, finalists))],
    ['best-looking', alternatives[0]!],
    ['random', alternatives[rng.below(alternatives.length)]!],
  ]);
  // A second analysis is expensive; one deal in eight is enough to publish it.
  if (deal % 8 === 0) {
    const other = analyze(noEvidence, offered, { subject, budget: BRIEF })!;
    picks.set(
      'no evidence on hidden racks',
      bestOf(other.finalists, ({ difference }) => difference.value),
    );
  }
  return picks;
}

/** What each of them is worth right after the pass, on as many deals as the review's own sample has at least. */
function rightAfter(
  { situation }: OfferedChoice,
  finalists: readonly ComparedAlternative[],
): (finalist: ComparedAlternative) => number {
  const source = dealsFor(analyst, situation, seedsFor(analyst, situation, {}));
  const actions = finalists.map(({ alternative }) => always(alternative.action));
  const results = source.rollOut({ first: 0, batches: BRIEF.fresh.least }, actions, 'step');
  return (finalist) => meanOf(column(results, finalists.indexOf(finalist), situation.seat));
}

function bestOf<T extends { readonly alternative: Alternative }>(
  finalists: readonly T[],
  scoreOf: (finalist: T) => number,
): Alternative {
  return finalists.reduce((best, other) => (scoreOf(other) > scoreOf(best) ? other : best)).alternative;
}
