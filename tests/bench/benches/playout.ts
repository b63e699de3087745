// How long a rollout of an exchange takes, from the first pass to the close with its four win probabilities.
import type { Rollouts } from '../../../shared-engine/analysis/rollouts/batch.ts';
import { createRollouts } from '../../../shared-engine/analysis/rollouts/simd.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { loadSimd, NO_SIMD } from '../../../shared-engine/kernels/simd/module.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { anyBatch } from '../../kit/rollout-batches.ts';
import { type Bench, nanoseconds } from '../bench.ts';

const DEALS = 100;
/** As many alternatives as a choice has after the first round of screening. */
const SIXTEEN = 16;

export const bench: Bench = {
  summary: 'Milliseconds for a rollout of a whole exchange of four seats, with the SIMD module and without.',
  async run({ seed }) {
    const simd = await loadSimd();
    if (simd.kind === 'unavailable') throw new Error(simd.reason);
    const card = houseCard();
    const fast = createRollouts(simd, card);
    const reference = createRollouts(NO_SIMD, card);
    const one = timesOf(seed, { alternatives: 1, deals: DEALS }, [fast, reference]);
    const sixteen = timesOf(seed, { alternatives: SIXTEEN, deals: DEALS / 10 }, [fast, reference]);
    return {
      ms_per_exchange: one.fast,
      plain_ms_per_exchange: one.reference,
      speedup: one.ratio,
      ms_per_exchange_of_16_alternatives: sixteen.fast,
      plain_ms_per_exchange_of_16_alternatives: sixteen.reference,
      speedup_of_16_alternatives: sixteen.ratio,
      targets: card.hands.length,
      worlds: DEALS,
    };
  },
};

function timesOf(
  seed: string,
  { alternatives, deals }: { readonly alternatives: number; readonly deals: number },
  both: readonly [Rollouts, Rollouts],
) {
  const shape = { step: 'first-right', seat: 0, dealer: 0, deals, alternatives } as const;
  const batch = anyBatch(shape, stream(seed, `bench/playout/${alternatives}`));
  const [quick, slow] = both.map((rollouts) => nanoseconds(deals * alternatives, () => rollouts.run(batch)));
  return {
    fast: Math.round(quick! / 100) / 10_000,
    reference: Math.round(slow! / 100) / 10_000,
    ratio: Math.round((slow! / quick!) * 10) / 10,
  };
}
