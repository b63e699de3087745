// Which tiles a simulated seat lets go: the least useful to its near targets, as it misjudges them.
import { JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { Near } from './reference.ts';

/** How much of the near targets' weight one unit of Gumbel noise is mistaken for. */
export const MISJUDGED = 0.02;

/** A tile that takes less than this share of the near targets' weight with it can be spared. */
export const SPARED = 0.5;

/**
 * Takes up to `size` tiles out of a rack that `near` has read, into `gone[at..]`, and says how many of them, one
 * after another, could be spared. `noise[noiseAt..]` holds one draw a face.
 */
export function letGo(
  near: Near,
  size: number,
  gone: Int8Array,
  at: number,
  noise: Float64Array,
  noiseAt: number,
): number {
  let spare = 0;
  for (let done = 0; done < size; done++) {
    const total = near.total();
    let least = -1;
    let lowest = Number.POSITIVE_INFINITY;
    let share = 0;
    for (let face = 0; face < JOKER_INDEX; face++) {
      if (near.held[face] === 0) continue;
      const own = total === 0 ? 0 : near.loss(face) / total;
      const seen = own - MISJUDGED * noise[noiseAt + face]!;
      if (seen < lowest) {
        lowest = seen;
        least = face;
        share = own;
      }
    }
    gone[at + done] = least;
    if (least === -1) continue;
    if (spare === done && share < SPARED) spare++;
    near.take(least);
  }
  return spare;
}
