// What rollouts gain a bot: one thoughtful seat among three strong ones, against a strong one on the same deals.
import { createAnalyst } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { chancesOf } from '../../../shared-engine/analysis/win-probability/table-value.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { finishRound } from '../../../shared-engine/bots/finish-round.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { loadSimd } from '../../../shared-engine/kernels/simd/module.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import type { StyleName } from '../../../shared-engine/policy/styles.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { sampleOf } from '../statistics/student.ts';

const card = houseCard();
const kernel = createSwarKernel(card);
const DEALS: Record<Size, number> = { small: 16, full: 400 };

interface End {
  readonly toGo: number;
  /** Chance in 100 to win the play that would follow. */
  readonly winProbability: number;
}

export const proof: Proof = {
  summary:
    'A thoughtful bot leaves the exchange with a higher win probability than a strong one on the same deals.',
  async run({ seed, size }) {
    const analyst = createAnalyst(card, await loadSimd());
    const ends = Array.from({ length: DEALS[size] }, (_, deal) => {
      const seat = SEATS[deal % 4]!;
      const dealer = SEATS[Math.floor(deal / 4) % 4]!;
      const end = (own: StyleName): End => {
        const round = begin(
          openRound({ seed: seedNamed(`${seed}/thoughtful/${deal}`), dealer }, { revealRacks: false }),
        );
        const { racks } = finishRound(round, (view, random) =>
          chooseFor(view.record.seat === seat ? own : 'strong', view, kernel, random, () => analyst),
        ).round;
        const { weight, wall } = analyst.leaf;
        const weights = SEATS.map((each) => weight(racks[each], 0, (each + 4 - dealer) % 4));
        const chances = new Float64Array(SEATS.length);
        chancesOf(weights, wall, chances);
        return { toGo: kernel.toGo(racks[seat]), winProbability: chances[seat]! };
      };
      return { strong: end('strong'), thoughtful: end('thoughtful') };
    });
    const of = (style: 'strong' | 'thoughtful', what: keyof End) => ends.map((pair) => pair[style][what]);
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
