// How long a simulated exchange of four seats takes, from the first pass to the close with its eight outlooks.
import {
  createRollouts,
  houseCard,
  loadSimd,
  NO_SIMD,
  type Rollouts,
  stream,
} from '../../../shared-engine/index.ts';
import { anyBatch } from '../../kit/rollout-batches.ts';
import { type Bench, nanoseconds } from '../bench.ts';

const WORLDS = 100;
/** As many acts a world as a choice has after its first thinning out. */
const SIXTEEN = 16;

export const bench: Bench = {
  summary:
    'Milliseconds for a whole simulated exchange of four seats, in the vector module and in plain words.',
  async run({ seed }) {
    const vectors = await loadSimd();
    if (vectors.kind === 'missing') throw new Error(vectors.reason);
    const card = houseCard();
    const fast = createRollouts(vectors, card);
    const plain = createRollouts(NO_SIMD, card);
    const one = timesOf(seed, 1, WORLDS, fast, plain);
    const sixteen = timesOf(seed, SIXTEEN, WORLDS / 10, fast, plain);
    return {
      ms_per_exchange: one.fast,
      plain_ms_per_exchange: one.plain,
      speedup: one.ratio,
      ms_per_exchange_of_16_alternatives: sixteen.fast,
      plain_ms_per_exchange_of_16_alternatives: sixteen.plain,
      speedup_of_16_alternatives: sixteen.ratio,
      targets: card.hands.length,
      worlds: WORLDS,
    };
  },
};

function timesOf(seed: string, alternatives: number, worlds: number, fast: Rollouts, plain: Rollouts) {
  const shape = { step: 'first-right', seat: 0, dealer: 0, worlds, alternatives } as const;
  const batch = anyBatch(shape, stream(seed, `bench/playout/${alternatives}`));
  const [quick, slow] = [fast, plain].map((playouts) =>
    nanoseconds(worlds * alternatives, () => playouts.run(batch)),
  );
  return {
    fast: Math.round(quick! / 100) / 10_000,
    plain: Math.round(slow! / 100) / 10_000,
    ratio: Math.round((slow! / quick!) * 10) / 10,
  };
}
