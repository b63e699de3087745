// Continue or stop: both tried with the same arrivals, this seat passing its least useful tiles one at a time.
import type { Kernel } from '../../kernels/index.ts';
import { type Bag, type ExchangeTerms, JOKER_INDEX, mayPassBlind } from '../../rules/index.ts';
import { arrivals } from './arrivals.ts';
import { spareTiles, type Worth } from './basis.ts';

const SECOND = ['second-left', 'second-across', 'second-right'] as const;
/** A multiple of four, so that each number the seat across may ask for comes up equally often. */
const SAMPLES = 32;
/** Three tiles for each of the three passes and for the courtesy pass. */
const TILES_PER_SAMPLE = 12;

/** Mean worth at the close after continuing and after stopping. */
export function continueOrStop(
  { rack, hidden, terms }: { readonly rack: Bag; readonly hidden: Bag; readonly terms: ExchangeTerms },
  kernel: Kernel,
  worth: Worth,
): { readonly continuing: number; readonly stopping: number } {
  let continuing = 0;
  let stopping = 0;
  const asks = terms.courtesy === 'by-asking';
  const samples = arrivals(hidden, { step: 'vote', size: TILES_PER_SAMPLE, count: SAMPLES });
  for (const [index, arriving] of samples.entries()) {
    const asked = asks ? index % 4 : 0;
    const courtesy = arriving.slice(9);
    stopping += worth(swapped(rack, Math.min(asked, spareTiles(kernel, rack)), courtesy, worth));
    let later = rack;
    for (const [pass, step] of SECOND.entries()) {
      const most = mayPassBlind(step, terms) ? spareTiles(kernel, later) : 3;
      later = swapped(later, Math.min(3, most), arriving.slice(3 * pass, 3 * pass + 3), worth);
    }
    continuing += worth(swapped(later, Math.min(asked, spareTiles(kernel, later)), courtesy, worth));
  }
  return { continuing: continuing / SAMPLES, stopping: stopping / SAMPLES };
}

/** The rack after its `count` least useful tiles, taken away one at a time, are replaced by the first of `arriving`. */
function swapped(rack: Bag, count: number, arriving: readonly number[], worth: Worth): Bag {
  const now = [...rack];
  for (let taken = 0; taken < count; taken++) now[leastUseful(now, worth)]!--;
  for (const face of arriving.slice(0, count)) now[face]!++;
  return now;
}

/** The face of which one tile less costs least; −1 where there are only jokers. */
export function leastUseful(rack: number[], worth: Worth): number {
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
