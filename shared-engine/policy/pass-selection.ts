// Which tiles of a rack are worth least, one after another or several at once.
import { type Kernel, nearness } from '../kernels/index.ts';
import {
  type Bag,
  FACES,
  type Face,
  faceIndex,
  JOKER_INDEX,
  type Random,
  shuffled,
  takeFrom,
} from '../rules/index.ts';
import { riskGrade } from './pass-risk.ts';
import type { NearnessStyle } from './styles.ts';

/** Every legal pass of `size` tiles by face index, each in rack order; which copy of a face goes makes no difference. */
export function legalPasses(rack: ArrayLike<number>, size: number): readonly (readonly number[])[] {
  const passes: number[][] = [];
  const extend = (pass: readonly number[], from: number, taken: number): void => {
    if (pass.length === size) {
      passes.push([...pass]);
      return;
    }
    for (let face = from; face < JOKER_INDEX; face++) {
      const same = face === from ? taken : 0;
      if (same < rack[face]!) extend([...pass, face], face, same + 1);
    }
  };
  extend([], 0, 0);
  return passes;
}

/** How a seat rates its rack during one step. */
export interface RackScorer {
  /** Nearness of a rack, without noise. */
  nearness(rack: Bag): number;
  /** What this seat wrongly adds to the nearness of the rack without the face, by face index. */
  readonly noise: readonly number[];
  /** Every face that may be passed, in the order in which ties are broken. */
  readonly order: readonly Face[];
}

export function createRackScorer(kernel: Kernel, style: NearnessStyle, random: Random): RackScorer {
  return {
    nearness: (rack) => nearness(kernel, rack),
    noise: FACES.map(() => style.noise * (random.below(2001) / 1000 - 1)),
    order: shuffled(FACES.slice(0, JOKER_INDEX), random),
  };
}

/** A tile taken out of a rack, and what that costs in tiles of nearness (noise included). */
export interface Removal {
  readonly face: Face;
  readonly cost: number;
  readonly rest: Bag;
}

/** Takes the tile that costs least out, `count` times in a row; fewer where nothing but jokers is left. */
export function removals(scorer: RackScorer, rack: Bag, count: number): Removal[] {
  const result: Removal[] = [];
  let rest = rack;
  for (let taken = 0; taken < count; taken++) {
    const [least] = cheapest(scorer, rest, 1);
    if (!least) break;
    result.push(least);
    rest = least.rest;
  }
  return result;
}

/** The `count` faces that cost least when one tile of them goes, cheapest first. */
function cheapest(scorer: RackScorer, rack: Bag, count: number): Removal[] {
  const before = scorer.nearness(rack);
  const options = scorer.order.flatMap((face): Removal[] => {
    const rest = takeFrom(rack, [face]);
    return rest
      ? [{ face, rest, cost: before - scorer.nearness(rest) - scorer.noise[faceIndex(face)]! }]
      : [];
  });
  return options.sort((a, b) => a.cost - b.cost).slice(0, count);
}

/** Faces among which a style that minds the risk of its pass chooses. */
const SHORTLIST = 7;

/** The `count` tiles whose loss and risk together cost least, among the faces that cost least alone. */
export function lowRiskTiles(
  scorer: RackScorer,
  rack: Bag,
  count: number,
  riskCosts: NonNullable<NearnessStyle['riskCosts']>,
): readonly Face[] {
  const faces = cheapest(scorer, rack, SHORTLIST).map(({ face }) => face);
  let best: readonly Face[] = [];
  let bestValue = Number.NEGATIVE_INFINITY;
  for (const tiles of multisets(faces, count)) {
    const rest = takeFrom(rack, tiles);
    if (!rest) continue;
    const noise = tiles.reduce((sum, face) => sum + scorer.noise[faceIndex(face)]!, 0);
    const value = scorer.nearness(rest) + noise - riskCosts[riskGrade(tiles)];
    if (value > bestValue) {
      best = tiles;
      bestValue = value;
    }
  }
  return best;
}

/** Every way to name `count` of the faces, a face as often as wanted. */
function multisets(faces: readonly Face[], count: number): Face[][] {
  if (count === 0) return [[]];
  return faces.flatMap((face, index) =>
    multisets(faces.slice(index), count - 1).map((others) => [face, ...others]),
  );
}
