// Which tiles of a rack are worth least, one after another or as three at once.

import type { Kernel } from '../kernels/tiles-to-go/kernel.ts';
import { nearness } from '../kernels/tiles-to-go/nearness.ts';
import { type Random, shuffled } from '../rules/deal/random.ts';
import { type Bag, takeFrom } from '../rules/tiles/bag.ts';
import { FACES, type Face, faceIndex, JOKER_INDEX } from '../rules/tiles/face.ts';
import { giftGrade } from './gift.ts';
import type { Judgement } from './styles.ts';

/** How a seat looks at its rack during one step. */
export interface Look {
  /** Nearness of a rack, without blur. */
  worth(rack: Bag): number;
  /** What this seat wrongly adds to the worth of the rack without the face, by face index. */
  readonly blur: readonly number[];
  /** Every face that may be passed, in the order in which ties are broken. */
  readonly order: readonly Face[];
}

export function lookAt(kernel: Kernel, style: Judgement, random: Random): Look {
  return {
    worth: (rack) => nearness(kernel, rack),
    blur: FACES.map(() => style.blur * (random.below(2001) / 1000 - 1)),
    order: shuffled(FACES.slice(0, JOKER_INDEX), random),
  };
}

/** A tile let go, and what that cost in tiles of nearness (blur included). */
export interface Removal {
  readonly face: Face;
  readonly cost: number;
  readonly rest: Bag;
}

/** Lets the least useful tile go `count` times in a row; fewer where nothing but jokers is left. */
export function removals(look: Look, rack: Bag, count: number): Removal[] {
  const result: Removal[] = [];
  let rest = rack;
  for (let done = 0; done < count; done++) {
    const [least] = cheapest(look, rest, 1);
    if (!least) break;
    result.push(least);
    rest = least.rest;
  }
  return result;
}

/** The `count` faces that cost least when one tile of them goes, cheapest first. */
function cheapest(look: Look, rack: Bag, count: number): Removal[] {
  const before = look.worth(rack);
  const options = look.order.flatMap((face): Removal[] => {
    const rest = takeFrom(rack, [face]);
    return rest ? [{ face, rest, cost: before - look.worth(rest) - look.blur[faceIndex(face)]! }] : [];
  });
  return options.sort((a, b) => a.cost - b.cost).slice(0, count);
}

/** Faces among which a style that minds its gifts chooses. */
const SHORTLIST = 7;

/** The `count` tiles whose loss and danger as a gift together cost least, among the faces that cost least alone. */
export function guardedTiles(
  look: Look,
  rack: Bag,
  count: number,
  gifts: NonNullable<Judgement['gifts']>,
): readonly Face[] {
  const faces = cheapest(look, rack, SHORTLIST).map(({ face }) => face);
  let best: readonly Face[] = [];
  let bestValue = Number.NEGATIVE_INFINITY;
  for (const tiles of choicesOf(faces, count)) {
    const rest = takeFrom(rack, tiles);
    if (!rest) continue;
    const blur = tiles.reduce((sum, face) => sum + look.blur[faceIndex(face)]!, 0);
    const value = look.worth(rest) + blur - gifts[giftGrade(tiles)];
    if (value > bestValue) {
      best = tiles;
      bestValue = value;
    }
  }
  return best;
}

/** Every way to name `count` of the faces, a face as often as one likes. */
function choicesOf(faces: readonly Face[], count: number): Face[][] {
  if (count === 0) return [[]];
  return faces.flatMap((face, index) =>
    choicesOf(faces.slice(index), count - 1).map((others) => [face, ...others]),
  );
}
