// Samples one move further: hidden seats give as they choose, and what came to the seat itself is made to have come.
import type { Rng } from '../../kernels/index.ts';
import type { ChoiceModel } from '../../policy/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import { hiddenTilesDealt, holderOf, recount, setHolderFrom, type TileHistory } from './history.ts';
import { createLikelihoodCache, waysToTake } from './likelihood.ts';
import { giverAt } from './situation.ts';

export interface MoveSampler {
  /** Samples one move of a history; the factor by which its weight changes. */
  sampleMove(history: TileHistory, move: number, rng: Rng): number;
}

/** What a seat gives in one move: so many of its tiles for which `free` holds. */
interface Giving {
  readonly move: number;
  readonly giver: number;
  readonly size: number;
  readonly free: (tile: number) => boolean;
}

/** Draws the tiles as the seat chooses; the probability of just these, copies told apart, is the second part. */
type TileDrawer = (history: TileHistory, giving: Giving, rng: Rng) => readonly [number[], number];

function createTileDrawer(model: ChoiceModel): TileDrawer {
  const fixed = new Uint8Array(FACE_COUNT);
  const drawn = new Uint8Array(FACE_COUNT);
  return (history, { move, giver, size, free }, rng) => {
    fixed.fill(0);
    for (let tile = 0; tile < history.tiles; tile++) {
      if (holderOf(history, tile, move) === giver && !free(tile)) fixed[history.face[tile]!]!++;
    }
    model.read(history.racks, move * DEAL_BYTES + giver * FACE_COUNT);
    let probability = model.draw(fixed, size, drawn, rng.uniform);
    const tiles: number[] = [];
    for (let face = 0; face < JOKER_INDEX; face++) {
      if (drawn[face] === 0) continue;
      const copies: number[] = [];
      for (let tile = 0; tile < history.tiles; tile++) {
        const here = holderOf(history, tile, move) === giver && history.face[tile] === face;
        if (here && free(tile)) copies.push(tile);
      }
      probability /= waysToTake(copies.length, drawn[face]!);
      for (let n = drawn[face]!; n > 0; n--) tiles.push(...copies.splice(rng.below(copies.length), 1));
    }
    return [tiles, probability];
  };
}

export function createMoveSampler(model: ChoiceModel): MoveSampler {
  const likelihood = createLikelihoodCache(model);
  const drawTiles = createTileDrawer(model);

  /** What came to the seat itself: its giver's tiles take the faces that came. The factor on the weight. */
  function giveToSeat(history: TileHistory, move: number, rng: Rng): number {
    const { seat, past } = history.situation;
    const { toward, received, forwarded } = past[move]!;
    const giver = giverAt(seat, toward);
    const dealt = hiddenTilesDealt(history.situation);
    const faces = stillToCome(history, move, received);
    const giving: Giving = {
      move,
      giver,
      size: faces.length + forwarded,
      free: (tile) => tile < dealt && history.fixed[tile] === 0,
    };
    const [tiles, probability] = drawTiles(history, giving, rng);
    let factor = 1 / probability;
    for (const face of faces) {
      if (tiles.length === 0) break;
      const [tile] = tiles.splice(rng.below(tiles.length), 1);
      factor *= exchangeFace(history, tile!, face, rng);
      history.fixed[tile!] = 1;
      setHolderFrom(history, tile!, move + 1, seat);
    }
    // What the seat passed blind goes past it to its own receiver.
    for (const tile of tiles) setHolderFrom(history, tile, move + 1, (seat + toward) % 4);
    recount(history);
    return factor;
  }

  /** A hidden seat gives to another; the probability of what it gives. */
  function giveToHidden(history: TileHistory, move: number, giver: number, rng: Rng): number {
    const { toward, blind, gave, forwarded, agreed } = history.situation.past[move]!;
    const whole = agreed?.[giver as 0 | 1 | 2 | 3] ?? gave.length + forwarded;
    const size = whole - blind[giver as 0 | 1 | 2 | 3] - fixedMoving(history, move, giver);
    if (size <= 0) return 1;
    const giving: Giving = { move, giver, size, free: (tile) => history.fixed[tile] === 0 };
    const [tiles, probability] = drawTiles(history, giving, rng);
    for (const tile of tiles) setHolderFrom(history, tile, move + 1, (giver + toward) % 4);
    return probability;
  }

  return {
    sampleMove(history, move, rng) {
      const { seat, past } = history.situation;
      const { toward } = past[move]!;
      likelihood.save(history);
      let factor = giveToSeat(history, move, rng);
      for (let giver = 0; giver < 4; giver++) {
        if (giver === seat || (giver + toward) % 4 === seat) continue;
        factor /= giveToHidden(history, move, giver, rng);
      }
      // From the seat's own receiver on, the way the tiles go: what one seat passes on may come from the one before.
      for (let giver = (seat + toward) % 4; (giver + toward) % 4 !== seat; giver = (giver + toward) % 4) {
        forwardBlind(history, move, giver, rng);
      }
      recount(history);
      return factor * likelihood.ratio(history, move + 1);
    },
  };
}

/** What came to the seat in this move and is not fixed to come already. */
function stillToCome(history: TileHistory, move: number, received: readonly number[]): number[] {
  const { seat, past } = history.situation;
  const giver = giverAt(seat, past[move]!.toward);
  const left = [...received];
  for (let tile = 0; tile < history.tiles; tile++) {
    if (history.fixed[tile] === 0 || holderOf(history, tile, move) !== giver) continue;
    if (holderOf(history, tile, move + 1) === giver) continue;
    const place = left.indexOf(history.face[tile]!);
    if (place !== -1) left.splice(place, 1);
  }
  return left;
}

/**
 * Gives a tile this face, and its own face to a hidden tile that had it, any of those as likely. The number of tiles
 * that had it: the fewer there were, the less likely was the face to come.
 */
function exchangeFace(history: TileHistory, tile: number, face: number, rng: Rng): number {
  const had: number[] = [];
  const dealt = hiddenTilesDealt(history.situation);
  for (let other = 0; other < dealt; other++) {
    if (history.fixed[other] === 0 && history.face[other] === face) had.push(other);
  }
  const number = had.length + history.wall[face]!;
  if (number === 0) return 0;
  const chosen = had[rng.below(number)];
  const own = history.face[tile]!;
  if (chosen === undefined) {
    history.wall[face]!--;
    history.wall[own]!++;
  } else history.face[chosen] = own;
  history.face[tile] = face;
  return number;
}

/** Fixed tiles that leave this seat in the move. */
function fixedMoving(history: TileHistory, move: number, seat: number): number {
  let moving = 0;
  for (let tile = 0; tile < history.tiles; tile++) {
    if (history.fixed[tile] === 0 || holderOf(history, tile, move) !== seat) continue;
    if (holderOf(history, tile, move + 1) !== seat) moving++;
  }
  return moving;
}

/** Passes as many of the tiles that arrive at a seat on as it passed blind. */
function forwardBlind(history: TileHistory, move: number, seat: number, rng: Rng): void {
  const { toward, blind } = history.situation.past[move]!;
  const to = (seat + toward) % 4;
  for (let n = 0; n < blind[seat as 0 | 1 | 2 | 3]; n++) {
    const arriving: number[] = [];
    for (let tile = 0; tile < history.tiles; tile++) {
      const arrives = holderOf(history, tile, move) !== seat && holderOf(history, tile, move + 1) === seat;
      if (arrives && history.fixed[tile] === 0) arriving.push(tile);
    }
    if (arriving.length > 0) {
      setHolderFrom(history, arriving[rng.below(arriving.length)]!, move + 1, to);
    }
  }
}
