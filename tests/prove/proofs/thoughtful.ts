// What rollouts gain a bot: one thoughtful seat among three strong ones, against a strong one on the same deals.
import { seatEnd } from '../analysis/one-seat.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { sampleOf } from '../statistics/student.ts';

const DEALS: Record<Size, number> = { small: 16, full: 400 };

export const proof: Proof = {
  summary:
    'A thoughtful bot leaves the exchange with a higher win probability than a strong one on the same deals.',
  async run({ seed, size }) {
    const ends = Array.from({ length: DEALS[size] }, (_, deal) => ({
      strong: seatEnd('strong', `${seed}/thoughtful`, deal),
      thoughtful: seatEnd('thoughtful', `${seed}/thoughtful`, deal),
    }));
    const of = (style: 'strong' | 'thoughtful', what: 'toGo' | 'winProbability') =>
      ends.map((pair) => pair[style][what]);
    const gain = ends.map(({ strong, thoughtful }) => thoughtful.winProbability - strong.winProbability);
    const nearer = ends.map(({ strong, thoughtful }) => strong.toGo - thoughtful.toGo);
    return [
      reported('tiles to go at the close, the thoughtful seat', of('thoughtful', 'toGo')),
      reported('tiles to go at the close, a strong bot in its seat', of('strong', 'toGo')),
      reported('tiles nearer than strong, paired by deal', nearer),
      reported('win probability at the close, the thoughtful seat', of('thoughtful', 'winProbability')),
      reported('win probability at the close, a strong bot in its seat', of('strong', 'winProbability')),
      // A few deals say nothing; that the figure is there is what the small size shows.
      size === 'small'
        ? reported('wins in 100 games more than strong, paired by deal', gain)
        : { ...reported('wins in 100 games more than strong, paired by deal', gain), ...above(gain) },
    ];
  },
};

function reported(what: string, values: readonly number[]): ProofRow {
  const { mean, error } = meanOf(values);
  const value = `${mean.toFixed(3)} ± ${error.toFixed(3)}`;
  return {
    what: `${what}, mean of ${values.length} deals ± standard error`,
    value,
    bar: 'reported',
    ok: true,
  };
}

function above(values: readonly number[]): Pick<ProofRow, 'bar' | 'ok'> {
  const { mean, error } = meanOf(values);
  return { bar: 'more than two standard errors above 0', ok: mean > 2 * error };
}

function meanOf(values: readonly number[]) {
  const { n, mean, deviation } = sampleOf(values);
  return { mean, error: deviation / Math.sqrt(n) };
}
