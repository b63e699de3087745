// A reduced exchange that can be counted out in full: 24 tiles, four racks of four, two passes, a toy card.
import {
  type Act,
  BATCH,
  createDraws,
  type Draws,
  type RaceAlternative,
  RESULT_WIDTH,
  type WorldSource,
} from '../../../shared-engine/index.ts';

/** Six faces, four copies each. */
const FACES = 6;
const COPIES = 4;
const RACK = 4;

type Counts = readonly number[];

/** Finished racks of the toy card. */
const TARGETS: readonly Counts[] = [
  [4, 0, 0, 0, 0, 0],
  [0, 2, 2, 0, 0, 0],
  [0, 0, 1, 1, 1, 1],
  [1, 0, 0, 3, 0, 0],
  [0, 1, 0, 0, 3, 0],
  [0, 0, 2, 0, 0, 2],
  [1, 1, 1, 0, 0, 1],
];

/** Outlook by tiles to go to the nearest finished rack. */
const OUTLOOK = [100, 55, 25, 8, 0];

function placeOf(rack: Counts): number {
  let place = 0;
  for (const count of rack) place = place * (COPIES + 2) + count;
  return place;
}

/** Remembers an answer a rack. */
function remembered(ask: (rack: Counts) => number): (rack: Counts) => number {
  const answers = new Int16Array((COPIES + 2) ** FACES).fill(-1);
  return (rack) => {
    const place = placeOf(rack);
    if (answers[place] === -1) answers[place] = ask(rack);
    return answers[place]!;
  };
}

const toGo = remembered((rack) =>
  Math.min(
    ...TARGETS.map(
      (target) => RACK - target.reduce((sum, want, face) => sum + Math.min(want, rack[face]!), 0),
    ),
  ),
);

function outlookOf(rack: Counts): number {
  return OUTLOOK[toGo(rack)]!;
}

function changed(rack: Counts, face: number, by: number): Counts {
  return rack.map((count, other) => (other === face ? count + by : count));
}

/** The face whose loss costs least; the first of several. */
const letsGo = remembered((rack) => {
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

export function positionOf(draws: Draws): Position {
  return { rack: deal([COPIES, COPIES, COPIES, COPIES, COPIES, COPIES], draws) };
}

function deal(left: number[], draws: Draws): Counts {
  const rack = new Array<number>(FACES).fill(0);
  for (let n = 0; n < RACK; n++) {
    let nth = draws.below(left.reduce((sum, count) => sum + count, 0));
    const face = left.findIndex((count) => {
      nth -= count;
      return nth < 0;
    });
    left[face]!--;
    rack[face]!++;
  }
  return rack;
}

export function actsOf({ rack }: Position): readonly RaceAlternative[] {
  return rack.flatMap((count, face) =>
    count > 0 ? [{ tiles: [face], number: null, act: [face, -1, -1, 1], kept: 0 }] : [],
  );
}

/** One tile to the right, then one across: the seat's own outlook after the first and at the end. */
function playOut(own: Counts, right: Counts, across: Counts, left: Counts, face: number): [number, number] {
  const fromLeft = letsGo(left);
  const fromRight = letsGo(right);
  const first = changed(changed(own, face, -1), fromLeft, 1);
  const acrossThen = changed(changed(across, letsGo(across), -1), fromRight, 1);
  const second = changed(changed(first, letsGo(first), -1), letsGo(acrossThen), 1);
  return [outlookOf(second), outlookOf(first)];
}

/** Worlds drawn evenly from the tiles the seat does not hold, in batches like those of the real game. */
export function worldsOf({ rack }: Position, seed: number): WorldSource {
  return {
    play(first, batches, acts: readonly Act[]) {
      const means = new Float64Array(batches * acts.length * RESULT_WIDTH);
      for (let world = 0; world < batches * BATCH; world++) {
        const key = first * BATCH + world;
        const draws = createDraws(seed, key);
        const unseen = rack.map((count) => COPIES - count);
        const [right, across, left] = [deal(unseen, draws), deal(unseen, draws), deal(unseen, draws)];
        for (const [a, act] of acts.entries()) {
          const at = (Math.floor(world / BATCH) * acts.length + a) * RESULT_WIDTH;
          const [close, after] = playOut(rack, right, across, left, act(key)[0]!);
          means[at]! += close / BATCH;
          means[at + 4]! += after / BATCH;
        }
      }
      return { batches, acts: acts.length, means };
    },
  };
}

/** Every rack of four from these tiles, with the number of ways to draw it. */
function racksFrom(unseen: Counts): readonly { readonly rack: Counts; readonly ways: number }[] {
  const found: { rack: Counts; ways: number }[] = [];
  const extend = (face: number, rack: number[], left: number, ways: number): void => {
    if (face === FACES) {
      if (left === 0) found.push({ rack: [...rack], ways });
      return;
    }
    let choose = 1;
    for (let count = 0; count <= Math.min(left, unseen[face]!); count++) {
      if (count > 0) choose = (choose * (unseen[face]! - count + 1)) / count;
      rack[face] = count;
      extend(face + 1, rack, left - count, ways * choose);
    }
    rack[face] = 0;
  };
  extend(0, [], RACK, 1);
  return found;
}

/** The exact mean of the seat's outlook at the end for each act: every rack of all three others, counted out. */
export function exactMeans(position: Position): readonly number[] {
  const acts = actsOf(position);
  const sums = acts.map(() => 0);
  let total = 0;
  const unseen = position.rack.map((count) => COPIES - count);
  const without = (rack: Counts): Counts => unseen.map((count, face) => count - rack[face]!);
  for (const left of racksFrom(unseen)) {
    const fromLeft = letsGo(left.rack);
    const firsts = acts.map(({ tiles }) => changed(changed(position.rack, tiles[0]!, -1), fromLeft, 1));
    const kept = firsts.map((first) => changed(first, letsGo(first), -1));
    for (const across of racksFrom(without(left.rack))) {
      const ways = left.ways * across.ways;
      const acrossKept = changed(across.rack, letsGo(across.rack), -1);
      const rest = without(left.rack).map((count, face) => count - across.rack[face]!);
      for (const [fromRight, chance] of passedFrom(rest).entries()) {
        if (chance === 0) continue;
        const arriving = letsGo(changed(acrossKept, fromRight, 1));
        const weight = ways * chance;
        total += weight;
        for (const [a, rack] of kept.entries()) sums[a]! += weight * outlookOf(changed(rack, arriving, 1));
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
      sums[letsGo(rack)]! += ways;
      total += ways;
    }
    chances = sums.map((sum) => sum / total);
    passed.set(key, chances);
  }
  return chances;
}
