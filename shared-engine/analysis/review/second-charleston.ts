// Go on or stop: both tried out in the same worlds, with plain greedy passing by this seat.

import type { Kernel } from '../../kernels/tiles-to-go/kernel.ts';
import { MOVES } from '../../rules/exchange/schedule.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { JOKER_INDEX } from '../../rules/tiles/face.ts';
import { arrivals } from './arrivals.ts';
import { spareTiles, type Worth } from './worth.ts';

const SECOND = ['second-left', 'second-across', 'second-right'] as const;
/** A multiple of four, so that each number the seat across may offer comes up equally often. */
const WORLDS = 32;
/** Three tiles for each of the three passes and for the courtesy pass. */
const WORLD_SIZE = 12;

/** Mean worth at the close after going on and after stopping. */
export function goOrStop(
  rack: Bag,
  unseen: Bag,
  kernel: Kernel,
  worth: Worth,
): { readonly go: number; readonly stop: number } {
  let go = 0;
  let stop = 0;
  arrivals(unseen, 'vote', WORLD_SIZE, WORLDS).forEach((world, index) => {
    const offered = index % 4;
    const courtesy = world.slice(9);
    stop += worth(swapped(rack, Math.min(offered, spareTiles(kernel, rack)), courtesy, worth));
    let later = rack;
    SECOND.forEach((step, pass) => {
      const most = MOVES[step].blind ? spareTiles(kernel, later) : 3;
      later = swapped(later, Math.min(3, most), world.slice(3 * pass, 3 * pass + 3), worth);
    });
    go += worth(swapped(later, Math.min(offered, spareTiles(kernel, later)), courtesy, worth));
  });
  return { go: go / WORLDS, stop: stop / WORLDS };
}

/** The rack after its `count` least useful tiles, taken away one at a time, are replaced by the first of `arriving`. */
function swapped(rack: Bag, count: number, arriving: readonly number[], worth: Worth): Bag {
  const now = [...rack];
  for (let gone = 0; gone < count; gone++) now[leastUseful(now, worth)]!--;
  for (const face of arriving.slice(0, count)) now[face]!++;
  return now;
}

function leastUseful(rack: number[], worth: Worth): number {
  let least = -1;
  let most = Number.NEGATIVE_INFINITY;
  for (let face = 0; face < JOKER_INDEX; face++) {
    if (rack[face] === 0) continue;
    rack[face]!--;
    const left = worth(rack);
    rack[face]!++;
    if (left > most) {
      most = left;
      least = face;
    }
  }
  return least;
}
