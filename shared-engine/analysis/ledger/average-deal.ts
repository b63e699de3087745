// What an average deal is worth to the steady player: the same for every round of a card, a place and ways to play.
import { createRng, type Rng } from '../../kernels/index.ts';
import { type Bag, FACE_COUNT, FULL_SET, faceIndex, facesOf } from '../../rules/index.ts';
import type { Situation } from '../belief/situation.ts';
import type { Analyst } from '../comparison/analyze.ts';
import { thousandth } from '../comparison/estimate.ts';
import { ACTION_BYTES, DEAL_BYTES, RESULT_WIDTH } from '../rollouts/batch.ts';
import type { SteadyPlayer } from './steady.ts';

/** Half the width of the interval is then below one win in 100 games. */
const DEALS = 1024;

/** Fixed, so that every round is compared with the same deals. */
const SEED = 0x61_76_67;

const TILES: readonly number[] = facesOf(FULL_SET).map(faceIndex);

export function averageDeal(
  { rollouts }: Pick<Analyst, 'rollouts'>,
  { firstPass }: SteadyPlayer,
  { seat, dealer, terms }: Pick<Situation, 'seat' | 'dealer' | 'terms'>,
): number {
  const deals = new Uint8Array(DEALS * DEAL_BYTES);
  const actions = new Int8Array(DEALS * ACTION_BYTES);
  for (let n = 0; n < DEALS; n++) {
    const rng = createRng(SEED, n);
    const left = [...TILES];
    for (let other = 0; other < 4; other++) {
      const at = n * DEAL_BYTES + other * FACE_COUNT;
      deals.set(drawRack(left, other === dealer ? 14 : 13, rng), at);
    }
    const own = n * DEAL_BYTES + seat * FACE_COUNT;
    actions.set(firstPass([...deals.subarray(own, own + FACE_COUNT)]), n * ACTION_BYTES);
  }
  const results = rollouts.run({
    seed: SEED,
    seat,
    dealer,
    terms,
    step: 0,
    agreed: [0, 0, 0, 0],
    end: 'close',
    neighbors: 'typical',
    count: DEALS,
    alternatives: 1,
    keys: Uint32Array.from({ length: DEALS }, (_, n) => n),
    deals,
    actions,
  });
  let sum = 0;
  for (let n = 0; n < DEALS; n++) sum += results[n * RESULT_WIDTH + seat]!;
  return thousandth(sum / DEALS);
}

/** Takes so many tiles out of those left. */
function drawRack(left: number[], size: number, rng: Rng): Bag {
  const rack = new Array<number>(FACE_COUNT).fill(0);
  for (let n = 0; n < size; n++) {
    const place = rng.below(left.length);
    rack[left[place]!]!++;
    left[place] = left.at(-1)!;
    left.pop();
  }
  return rack;
}
