// Metropolis steps: two tiles of a history change places, and the change stays with the probability its likelihood gives.
import type { Rng } from '../../kernels/index.ts';
import type { ChoiceModel } from '../../policy/index.ts';
import { JOKER_INDEX } from '../../rules/index.ts';
import { addToCounts, hiddenTilesDealt, holderOf, swapHoldersAfter, type TileHistory } from './history.ts';
import { createLikelihoodCache } from './likelihood.ts';

const WALL_TILES = 99;

export interface SwapProposal {
  /** One proposal, weighed by the moves before `until`. Whether it was accepted. */
  propose(history: TileHistory, until: number, rng: Rng): boolean;
}

/** A change of some tiles that is undone by making it again. */
interface Swap {
  readonly tiles: readonly number[];
  readonly make: () => void;
}

/** Every proposal is as likely as the one that undoes it, so likelihoods alone decide. */
export function createSwapProposal(model: ChoiceModel): SwapProposal {
  const likelihood = createLikelihoodCache(model);
  return {
    propose(history, until, rng) {
      const swap = drawSwap(history, until, rng);
      if (swap === null) return false;
      likelihood.save(history);
      for (const tile of swap.tiles) addToCounts(history, tile, -1);
      swap.make();
      for (const tile of swap.tiles) addToCounts(history, tile, 1);
      if (rng.uniform() < likelihood.ratio(history, until)) return true;
      swap.make();
      likelihood.restore(history);
      return false;
    },
  };
}

/** Null where the tiles drawn cannot change places. */
function drawSwap(history: TileHistory, until: number, rng: Rng): Swap | null {
  switch (rng.below(4)) {
    case 0:
      return withWall(history, rng);
    case 1:
      return betweenRacks(history, rng);
    default:
      return passedForHeld(history, until, rng);
  }
}

function withWall(history: TileHistory, rng: Rng): Swap | null {
  const tile = rng.below(hiddenTilesDealt(history.situation));
  const drawn = faceAt(history.wall, rng.below(WALL_TILES));
  if (history.fixed[tile] === 1 || drawn === -1 || drawn === history.face[tile]) return null;
  let other = drawn;
  return {
    tiles: [tile],
    make: () => {
      const face = history.face[tile]!;
      history.wall[other]!--;
      history.wall[face]!++;
      history.face[tile] = other;
      other = face;
    },
  };
}

function betweenRacks(history: TileHistory, rng: Rng): Swap | null {
  const dealt = hiddenTilesDealt(history.situation);
  const a = rng.below(dealt);
  const b = rng.below(dealt);
  const { fixed, face } = history;
  if (fixed[a] === 1 || fixed[b] === 1 || face[a] === face[b]) return null;
  return { tiles: [a, b], make: () => swapFaces(history, a, b) };
}

/** A tile passed and a tile held change roles; with their faces, where what came to the seat is known. */
function passedForHeld(history: TileHistory, until: number, rng: Rng): Swap | null {
  const move = rng.below(until);
  const seat = rng.below(4);
  const takesFaces = rng.below(2) === 1;
  const a = pickTile(history, { seat, move, leaves: true }, rng);
  const b = pickTile(history, { seat, move, leaves: false }, rng);
  if (a === -1 || b === -1) return null;
  const dealt = hiddenTilesDealt(history.situation);
  const { fixed, face } = history;
  const same = face[a] === face[b];
  if (takesFaces ? !same && (a >= dealt || b >= dealt) : !same && (fixed[a] === 1 || fixed[b] === 1)) {
    return null;
  }
  return {
    tiles: [a, b],
    make: () => {
      swapPaths(history, a, b, move);
      if (takesFaces) swapFaces(history, a, b);
    },
  };
}

function swapFaces({ face }: TileHistory, a: number, b: number): void {
  const own = face[a]!;
  face[a] = face[b]!;
  face[b] = own;
}

/** From the move on each of the two tiles goes the other's way, known or not. */
function swapPaths(history: TileHistory, a: number, b: number, move: number): void {
  swapHoldersAfter(history, a, b, move);
  const { fixed } = history;
  const known = fixed[a]!;
  fixed[a] = fixed[b]!;
  fixed[b] = known;
}

/** Tiles held by a seat before a move that leave it in the move, or stay. */
interface TileGroup {
  readonly seat: number;
  readonly move: number;
  readonly leaves: boolean;
}

/** Any tile of the group as likely; −1 where there is none. */
function pickTile(history: TileHistory, group: TileGroup, rng: Rng): number {
  let found = 0;
  for (let tile = 0; tile < history.tiles; tile++) if (isIn(group, history, tile)) found++;
  if (found === 0) return -1;
  let nth = rng.below(found);
  for (let tile = 0; tile < history.tiles; tile++) {
    if (isIn(group, history, tile) && nth-- === 0) return tile;
  }
  return -1;
}

function isIn({ seat, move, leaves }: TileGroup, history: TileHistory, tile: number): boolean {
  if (holderOf(history, tile, move) !== seat) return false;
  return (holderOf(history, tile, move + 1) !== seat) === leaves;
}

function faceAt(bag: Uint8Array, nth: number): number {
  let left = nth;
  for (let face = 0; face <= JOKER_INDEX; face++) {
    left -= bag[face]!;
    if (left < 0) return face;
  }
  return -1;
}
