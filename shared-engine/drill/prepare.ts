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
import { completeRacks, rackProblems } from './manual.ts';
import { type DrillProblem, drillProblem, placeOf } from './problem.ts';
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
  { bots, deals }: Pick<Drill, 'bots'> & Partial<Pick<Drill, 'deals'>>,
  drillDeal: DrillDeal,
  kernel: Kernel,
  budget?: SearchBudget,
): Prepared {
  const { seat, dealer, tiles } = drillDeal;
  if (tiles.kind !== 'sampled') return { ok: true, deal: withoutCard(bots, drillDeal, tiles) };
  const drawn = sampleRack(
    { constraint: tiles.constraint, size: dealtSize(seat, dealer), kernel },
    tiles.seed,
    budget,
  );
  if (!drawn.ok) {
    const place = placeOf(drillDeal, deals);
    return { ok: false, problem: drillProblem(drawn.code, place, drawn.message) };
  }
  const rack = facesOf(drawn.rack);
  const racks = forFour((place) => (place === seat ? rack : EMPTY_RACKS[place]));
  return { ok: true, deal: completeRacks(racks, dealer, tiles.seed, roundSeedOf(bots, tiles.seed)) };
}

/**
 * The rack that a deal gives to its seat, where no card is needed to draw it; null for one that fits a description, and
 * for tiles that cannot be dealt.
 */
export function plainRack({ bots }: Pick<Drill, 'bots'>, drillDeal: DrillDeal): readonly Face[] | null {
  const { seat, dealer, tiles } = drillDeal;
  if (tiles.kind === 'sampled') return null;
  if (tiles.kind === 'manual') {
    const racks = scriptedRacks(tiles.racks, drillDeal);
    if (rackProblems(racks, dealer, placeOf(drillDeal)).length > 0) return null;
  }
  return withoutCard(bots, drillDeal, tiles).prepared[seat];
}

type PlainTiles = Exclude<DrillDeal['tiles'], { readonly kind: 'sampled' }>;

function withoutCard(bots: Drill['bots'], drillDeal: DrillDeal, tiles: PlainTiles): PreparedDeal {
  const { dealer } = drillDeal;
  const seed = roundSeedOf(bots, tiles.seed);
  switch (tiles.kind) {
    case 'random': {
      const { racks } = dealTiles({ seed: tiles.seed, dealer });
      return { seed, dealer, prepared: forFour((place) => facesOf(racks[place])) };
    }
    case 'manual':
      return completeRacks(scriptedRacks(tiles.racks, drillDeal), dealer, tiles.seed, seed);
  }
}

/** The seed of everything after the deal. */
function roundSeedOf(bots: Drill['bots'], seed: string): string {
  return seedFrom(stream(bots.seed, `after the deal ${seed}`));
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
