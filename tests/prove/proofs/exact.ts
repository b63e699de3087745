// Against the truth: a reduced exchange counted out in full, and how far the estimates are from it.
import { type Comparison, compare, createRng, studentPoint } from '../../../shared-engine/index.ts';
import { NOWHERE } from '../analysis/placeholder-situation.ts';
import { actsOf, exactMeans, positionOf, worldsOf } from '../analysis/reduced-game.ts';
import type { Proof } from '../proof.ts';
import { sampleOf } from '../statistics/student.ts';

const POSITIONS = { small: 120, full: 4_000 };

/** A hundred positions leave a mean uncertain by a tenth and a variance by an eighth. */
const MEAN = { small: 0.3, full: 0.1 };
const VARIANCE = { small: [0.65, 1.4], full: [0.9, 1.1] } as const;
const LUCK_BATCHES = 16;
const BATCHES = 96;
const SHOWN_TAIL = 0.025;

export const proof: Proof = {
  summary: 'In a reduced exchange counted out in full the estimates miss by no more than they say.',
  async run({ seed, size }) {
    const positions = POSITIONS[size];
    const [least, most] = VARIANCE[size];
    const key = createRng(0, seed.length).below(1_000_000);
    const scores: number[] = [];
    let covered = 0;
    for (let n = 0; scores.length < positions; n++) {
      const position = positionOf(createRng(key, n));
      const acts = actsOf(position);
      if (acts.length < 2) continue;
      const result = raced(position, acts, n);
      const exact = exactMeans(position);
      const { value, halfWidth } = result.bestAlternative!.difference;
      if (halfWidth === 0) continue;
      const truth =
        exact[acts.indexOf(result.bestAlternative!.alternative)]! -
        exact[acts.indexOf(result.chosen.alternative)]!;
      scores.push(((value - truth) / halfWidth) * studentPoint(SHOWN_TAIL, BATCHES - 2));
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

function raced(
  position: ReturnType<typeof positionOf>,
  acts: ReturnType<typeof actsOf>,
  n: number,
): Comparison {
  const source = worldsOf(position, n);
  const chosen = acts[n % acts.length]!;
  const others = acts.filter((act) => act !== chosen);
  const finalists = [...others, chosen];
  const { means } = source.rollOut(
    0,
    LUCK_BATCHES,
    finalists.map(
      ({ action }) =>
        () =>
          action,
    ),
  );
  const controls = finalists.map((_, a) =>
    Float64Array.from({ length: LUCK_BATCHES }, (_unused, b) => means[(b * finalists.length + a) * 8 + 4]!),
  );
  const budget = { field: acts.length, rounds: [], looks: [BATCHES] };
  return compare(source, NOWHERE, null, { finalists, controls }, chosen, null, budget);
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
