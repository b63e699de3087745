// One way the hidden tiles may have lain and moved: which tile has which face, and who held it before each move.
import { FACE_COUNT } from '../../rules/index.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import type { Situation } from './situation.ts';

/**
 * Tiles are numbered: first those dealt to the three hidden seats, then those the seat itself gave. A tile whose
 * holder is the seat itself is not (or no longer) hidden. Counts by face are stored beside the numbered tiles.
 */
export interface TileHistory {
  readonly situation: Situation;
  readonly tiles: number;
  /** Moves that are over; each tile has a holder before each of them and one now. */
  readonly moves: number;
  readonly face: Uint8Array;
  /** Holder before each move, at tile × (moves + 1) + move. */
  readonly holder: Uint8Array;
  /** 1 where the rest of the tile's path is known, because it came to the seat itself. */
  readonly fixed: Uint8Array;
  /** Tiles of nobody, by face. */
  readonly wall: Uint8Array;
  /** Racks before each move: move × 144 + seat × 36. */
  readonly racks: Uint8Array;
  /** Tiles each seat gave of its own in each move, laid out the same way. */
  readonly passes: Uint8Array;
  /** The same bytes four at a time, for comparing. */
  readonly rackWords: Int32Array;
  readonly passWords: Int32Array;
  /** Likelihood of each pass, at move × 4 + seat; 1 for a pass that tells nothing. */
  readonly likelihood: Float64Array;
}

/** Hidden tiles dealt: 13 a seat, 14 to the dealer. */
export function hiddenTilesDealt({ seat, dealer }: Situation): number {
  return dealer === seat ? 39 : 40;
}

export function createHistory(situation: Situation): TileHistory {
  const moves = situation.past.length;
  const given = situation.past.reduce((sum, { gave }) => sum + gave.length, 0);
  const tiles = hiddenTilesDealt(situation) + given;
  const racks = new Uint8Array((moves + 1) * DEAL_BYTES);
  const passes = new Uint8Array(moves * DEAL_BYTES);
  return {
    situation,
    tiles,
    moves,
    face: new Uint8Array(tiles),
    holder: new Uint8Array(tiles * (moves + 1)),
    fixed: new Uint8Array(tiles),
    wall: new Uint8Array(FACE_COUNT),
    racks,
    passes,
    rackWords: new Int32Array(racks.buffer),
    passWords: new Int32Array(passes.buffer),
    likelihood: new Float64Array(moves * 4).fill(1),
  };
}

/** Both are of the same situation. */
export function copyHistory(from: TileHistory, to: TileHistory): void {
  to.face.set(from.face);
  to.holder.set(from.holder);
  to.fixed.set(from.fixed);
  to.wall.set(from.wall);
  to.racks.set(from.racks);
  to.passes.set(from.passes);
  to.likelihood.set(from.likelihood);
}

export function holderOf(history: TileHistory, tile: number, move: number): number {
  return history.holder[tile * (history.moves + 1) + move]!;
}

/** From this move on the tile is held by this seat. */
export function setHolderFrom(history: TileHistory, tile: number, move: number, seat: number): void {
  const row = tile * (history.moves + 1);
  history.holder.fill(seat, row + move, row + history.moves + 1);
}

/** Adds one tile to the counts of `racks` and `passes` along its whole path, or takes it out of them. */
export function addToCounts(history: TileHistory, tile: number, by: 1 | -1): void {
  const { situation, moves, holder, face, racks, passes } = history;
  const row = tile * (moves + 1);
  for (let move = 0; move <= moves; move++) {
    const seat = holder[row + move]!;
    if (seat === situation.seat) continue;
    const at = move * DEAL_BYTES + seat * FACE_COUNT + face[tile]!;
    racks[at]! += by;
    if (move < moves && holder[row + move + 1] !== seat) passes[at]! += by;
  }
}

/** Counts every tile anew. */
export function recount(history: TileHistory): void {
  history.racks.fill(0);
  history.passes.fill(0);
  for (let tile = 0; tile < history.tiles; tile++) addToCounts(history, tile, 1);
}
