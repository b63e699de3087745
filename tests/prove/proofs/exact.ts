// Against the truth: a reduced exchange counted out in full, and how far the estimates are from it.
import type { Alternative } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { type Comparison, compare } from '../../../shared-engine/analysis/comparison/comparison.ts';
import { studentQuantile } from '../../../shared-engine/analysis/comparison/quantiles.ts';
import { always, column } from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import { createRng } from '../../../shared-engine/kernels/philox.ts';
import { alternativesOf, dealsOf, exactMeans, type Position, positionOf } from '../analysis/reduced-game.ts';
import type { Proof } from '../proof.ts';
import { keyOf } from '../seeds.ts';
import { sampleOf } from '../statistics/student.ts';

const POSITIONS = { small: 60, full: 4_000 };

/** A hundred positions leave a mean uncertain by a tenth and a variance by an eighth. */
const MEAN = { small: 0.3, full: 0.1 };
const VARIANCE = { small: [0.65, 1.4], full: [0.9, 1.1] } as const;
const CONTROL_BATCHES = 16;
const BATCHES = 96;
const SHOWN_TAIL = 0.025;

export const proof: Proof = {
  summary: 'In a reduced exchange counted out in full the estimates miss by no more than they say.',
  async run({ seed, size }) {
    const positions = POSITIONS[size];
    const [least, most] = VARIANCE[size];
    const key = keyOf(seed);
    const scores: number[] = [];
    let covered = 0;
    for (let n = 0; scores.length < positions; n++) {
      const position = positionOf(createRng(key, n));
      const alternatives = alternativesOf(position);
      if (alternatives.length < 2) continue;
      const result = compared(position, alternatives, n);
      const exact = exactMeans(position);
      const { value, halfWidth } = result.bestAlternative!.difference;
      if (halfWidth === 0) continue;
      const truth =
        exact[alternatives.indexOf(result.bestAlternative!.alternative)]! -
        exact[alternatives.indexOf(result.chosen.alternative)]!;
      scores.push(((value - truth) / halfWidth) * studentQuantile(SHOWN_TAIL, BATCHES - 1));
      if (Math.abs(value - truth) <= halfWidth) covered++;
    }
    const { mean, deviation } = sampleOf(scores);
    const variance = deviation ** 2;
    return [
      {
        what: `mean of (estimate − truth) ÷ standard error over ${positions} positions`,
        value: round(mean),
        bar: `within ±${MEAN[size]}`,
        ok: Math.abs(mean) <= MEAN[size],
      },
      {
        what: 'its variance',
        value: round(variance),
        bar: `${least}–${most}`,
        ok: variance >= least && variance <= most,
      },
      {
        what: '95 % intervals that hold the truth, in 100',
        value: round((100 * covered) / positions),
        bar: 'reported',
        ok: true,
      },
    ];
  },
};

function compared(position: Position, alternatives: readonly Alternative[], n: number): Comparison {
  const source = dealsOf(position, n);
  const chosen = alternatives[n % alternatives.length]!;
  const finalists = [...alternatives.filter((other) => other !== chosen), chosen];
  const results = source.rollOut(
    { first: 0, batches: CONTROL_BATCHES },
    finalists.map(({ action }) => always(action)),
  );
  const searched = finalists.map((alternative, a) => ({
    alternative,
    own: column(results, a, 0),
  }));
  return compare(source, {
    seat: 0,
    receiver: null,
    screened: { finalists: searched },
    chosen,
    typicalPass: null,
    fresh: { least: BATCHES, most: BATCHES },
  });
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
