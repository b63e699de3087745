// A reduced exchange that can be counted out in full: 24 tiles, four racks of four, two passes, a toy card.
import { DEALS_PER_BATCH } from '../../../shared-engine/analysis/belief/particle-filter.ts';
import type { Alternative } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import type { DealAction, DealSource } from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import { RESULT_WIDTH } from '../../../shared-engine/analysis/rollouts/batch.ts';
import { createRng, type Rng } from '../../../shared-engine/kernels/philox.ts';
import type { Four } from '../../../shared-engine/rules/tiles/face.ts';

/** Six faces, four copies each. */
const FACES = 6;
const COPIES = 4;
const RACK = 4;

type Counts = readonly number[];

/** Hands of the toy card. */
const HANDS: readonly Counts[] = [
  [4, 0, 0, 0, 0, 0],
  [0, 2, 2, 0, 0, 0],
  [0, 0, 1, 1, 1, 1],
  [1, 0, 0, 3, 0, 0],
  [0, 1, 0, 0, 3, 0],
  [0, 0, 2, 0, 0, 2],
  [1, 1, 1, 0, 0, 1],
];

/** Win probability by tiles to go to the nearest hand. */
const WIN_PROBABILITY = [100, 55, 25, 8, 0];

function placeOf(rack: Counts): number {
  let place = 0;
  for (const count of rack) place = place * (COPIES + 2) + count;
  return place;
}

/** Caches a result by rack. */
function cached(compute: (rack: Counts) => number): (rack: Counts) => number {
  const results = new Int16Array((COPIES + 2) ** FACES).fill(-1);
  return (rack) => {
    const place = placeOf(rack);
    if (results[place] === -1) results[place] = compute(rack);
    return results[place]!;
  };
}

const toGo = cached((rack) =>
  Math.min(
    ...HANDS.map((hand) => RACK - hand.reduce((sum, want, face) => sum + Math.min(want, rack[face]!), 0)),
  ),
);

function winProbabilityOf(rack: Counts): number {
  return WIN_PROBABILITY[toGo(rack)]!;
}

function changed(rack: Counts, face: number, by: number): Counts {
  return rack.map((count, other) => (other === face ? count + by : count));
}

/** The face whose loss costs least; the first of several. */
const tilePassed = cached((rack) => {
  let best = -1;
  let least = RACK + 2;
  for (let face = 0; face < FACES; face++) {
    if (rack[face] === 0) continue;
    const left = toGo(changed(rack, face, -1));
    if (left < least) {
      least = left;
      best = face;
    }
  }
  return best;
});

export interface Position {
  readonly rack: Counts;
}

export function positionOf(rng: Rng): Position {
  return { rack: deal([COPIES, COPIES, COPIES, COPIES, COPIES, COPIES], rng) };
}

function deal(left: number[], rng: Rng): Counts {
  const rack = new Array<number>(FACES).fill(0);
  for (let n = 0; n < RACK; n++) {
    let nth = rng.below(left.reduce((sum, count) => sum + count, 0));
    const face = left.findIndex((count) => {
      nth -= count;
      return nth < 0;
    });
    left[face]!--;
    rack[face]!++;
  }
  return rack;
}

export function alternativesOf({ rack }: Position): readonly Alternative[] {
  return rack.flatMap((count, face) =>
    count > 0 ? [{ tiles: [face], number: null, action: [face, -1, -1, 1], keptValue: 0 }] : [],
  );
}

/** One tile to the right, then one across: the seat's own win probability at the end. */
function rollOut([own, right, across, left]: Four<Counts>, face: number): number {
  const fromLeft = tilePassed(left);
  const fromRight = tilePassed(right);
  const first = changed(changed(own, face, -1), fromLeft, 1);
  const acrossThen = changed(changed(across, tilePassed(across), -1), fromRight, 1);
  const second = changed(changed(first, tilePassed(first), -1), tilePassed(acrossThen), 1);
  return winProbabilityOf(second);
}

/** Deals sampled evenly from the tiles the seat does not hold, in batches like those of the real game. */
export function dealsOf({ rack }: Position, seed: number): DealSource {
  return {
    rollOut({ first, batches }, actions: readonly DealAction[]) {
      const deals = batches * DEALS_PER_BATCH;
      const values = new Float64Array(deals * actions.length * RESULT_WIDTH);
      for (let nth = 0; nth < deals; nth++) {
        const key = first * DEALS_PER_BATCH + nth;
        const rng = createRng(seed, key);
        const hidden = rack.map((count) => COPIES - count);
        const racks: Four<Counts> = [rack, deal(hidden, rng), deal(hidden, rng), deal(hidden, rng)];
        for (const [a, action] of actions.entries()) {
          const at = (nth * actions.length + a) * RESULT_WIDTH;
          values[at] = rollOut(racks, action.of(key)[0]!);
        }
      }
      return { deals, actions: actions.length, values };
    },
  };
}

/** Every rack of four from these tiles, with the number of ways to draw it. */
function racksFrom(hidden: Counts): readonly { readonly rack: Counts; readonly ways: number }[] {
  const found: { rack: Counts; ways: number }[] = [];
  const extend = (face: number, rack: number[], left: number, ways: number): void => {
    if (face === FACES) {
      if (left === 0) found.push({ rack: [...rack], ways });
      return;
    }
    let choose = 1;
    for (let count = 0; count <= Math.min(left, hidden[face]!); count++) {
      if (count > 0) choose = (choose * (hidden[face]! - count + 1)) / count;
      rack[face] = count;
      extend(face + 1, rack, left - count, ways * choose);
    }
    rack[face] = 0;
  };
  extend(0, [], RACK, 1);
  return found;
}

/** The exact mean win probability at the end for each alternative: every rack of all three others, counted out. */
export function exactMeans(position: Position): readonly number[] {
  const alternatives = alternativesOf(position);
  const sums = alternatives.map(() => 0);
  let total = 0;
  const hidden = position.rack.map((count) => COPIES - count);
  const without = (rack: Counts): Counts => hidden.map((count, face) => count - rack[face]!);
  for (const left of racksFrom(hidden)) {
    const fromLeft = tilePassed(left.rack);
    const firsts = alternatives.map(({ tiles }) =>
      changed(changed(position.rack, tiles[0]!, -1), fromLeft, 1),
    );
    const kept = firsts.map((first) => changed(first, tilePassed(first), -1));
    for (const across of racksFrom(without(left.rack))) {
      const ways = left.ways * across.ways;
      const acrossKept = changed(across.rack, tilePassed(across.rack), -1);
      const rest = without(left.rack).map((count, face) => count - across.rack[face]!);
      for (const [fromRight, chance] of passedFrom(rest).entries()) {
        if (chance === 0) continue;
        const arriving = tilePassed(changed(acrossKept, fromRight, 1));
        const weight = ways * chance;
        total += weight;
        for (const [a, rack] of kept.entries())
          sums[a]! += weight * winProbabilityOf(changed(rack, arriving, 1));
      }
    }
  }
  return sums.map((sum) => sum / total);
}

const passed = new Map<string, readonly number[]>();

/** Chance of each face to be passed by a rack of four drawn from these tiles. */
function passedFrom(tiles: Counts): readonly number[] {
  const key = tiles.join();
  let chances = passed.get(key);
  if (!chances) {
    const sums = new Array<number>(FACES).fill(0);
    let total = 0;
    for (const { rack, ways } of racksFrom(tiles)) {
      sums[tilePassed(rack)]! += ways;
      total += ways;
    }
    chances = sums.map((sum) => sum / total);
    passed.set(key, chances);
  }
  return chances;
}
