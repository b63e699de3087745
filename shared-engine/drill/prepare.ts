// Deals one deal of a drill: the tiles that every table of the class gets.
import type { Kernel } from '../kernels/index.ts';
import type { StyleName } from '../policy/index.ts';
import {
  dealTiles,
  dealtSize,
  type Face,
  type Four,
  facesOf,
  forFour,
  neighbor,
  type PreparedDeal,
  type Seat,
  seedFrom,
  stream,
} from '../rules/index.ts';
import type { Drill, DrillDeal } from './format.ts';
import { completeRacks } from './manual.ts';
import { type DrillProblem, drillProblem } from './problem.ts';
import { sampleRack } from './sampled.ts';
import { scriptedRacks } from './scripted.ts';
import type { SearchBudget } from './search-budget.ts';

export type Prepared =
  | { readonly ok: true; readonly deal: PreparedDeal }
  | { readonly ok: false; readonly problem: DrillProblem };

const EMPTY_RACKS: Four<readonly Face[]> = [[], [], [], []];

/**
 * Deals one deal of a parsed drill. The same drill, deal and card give the same tiles, and with them the same
 * blind draws and bots, at every table and on every machine, so that equal choices have equal consequences. Deals of one
 * drill share a budget for what drawing their racks may cost.
 */
export function prepareDeal(
  { bots }: Pick<Drill, 'bots'>,
  drillDeal: DrillDeal,
  kernel: Kernel,
  budget?: SearchBudget,
): Prepared {
  const { id, seat, dealer, tiles } = drillDeal;
  const roundSeed = seedFrom(stream(bots.seed, `after the deal ${tiles.seed}`));
  switch (tiles.kind) {
    case 'random': {
      const { racks } = dealTiles({ seed: tiles.seed, dealer });
      const prepared = forFour((place) => facesOf(racks[place]));
      return { ok: true, deal: { seed: roundSeed, dealer, prepared } };
    }
    case 'manual': {
      const racks = scriptedRacks(tiles.racks, drillDeal);
      return { ok: true, deal: completeRacks(racks, dealer, tiles.seed, roundSeed) };
    }
    case 'sampled': {
      const drawn = sampleRack(
        { constraint: tiles.constraint, size: dealtSize(seat, dealer), kernel },
        tiles.seed,
        budget,
      );
      if (!drawn.ok) return { ok: false, problem: drillProblem(drawn.code, id, drawn.message) };
      const rack = facesOf(drawn.rack);
      const racks = forFour((place) => (place === seat ? rack : EMPTY_RACKS[place]));
      return { ok: true, deal: completeRacks(racks, dealer, tiles.seed, roundSeed) };
    }
  }
}

/** Which bot sits where around this seat; null for the seat itself. */
export function botsAround(seat: Seat, { styles }: Drill['bots']): Four<StyleName | null> {
  const [right, across, left] = styles;
  const styleAt = new Map([
    [neighbor(seat, 'right'), right],
    [neighbor(seat, 'across'), across],
    [neighbor(seat, 'left'), left],
  ]);
  return forFour((place) => styleAt.get(place) ?? null);
}
