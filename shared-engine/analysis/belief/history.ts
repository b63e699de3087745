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
  /** Tiles numbered so far: those that the seat gives in a move follow when that move is sampled. */
  tiles: number;
  /** Moves that are over; each tile has a holder before each of them and one now. */
  readonly moves: number;
  readonly face: Uint8Array;
  /** Holder before each move, at tile × `COLUMNS` + move. */
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

/** Moves of a round, the courtesy pass included, tiles that are numbered at most, and holders of each. */
export const MOST_MOVES = 7;
const MOST_TILES = 40 + 3 * MOST_MOVES;
const COLUMNS = MOST_MOVES + 1;

/** Hidden tiles dealt: 13 a seat, 14 to the dealer. */
export function hiddenTilesDealt({ seat, dealer }: Situation): number {
  return dealer === seat ? 39 : 40;
}

export function createHistory(situation: Situation): TileHistory {
  const moves = situation.past.length;
  const racks = new Uint8Array((moves + 1) * DEAL_BYTES);
  const passes = new Uint8Array(moves * DEAL_BYTES);
  return {
    situation,
    tiles: hiddenTilesDealt(situation),
    moves,
    face: new Uint8Array(MOST_TILES),
    holder: new Uint8Array(MOST_TILES * COLUMNS),
    fixed: new Uint8Array(MOST_TILES),
    wall: new Uint8Array(FACE_COUNT),
    racks,
    passes,
    rackWords: new Int32Array(racks.buffer),
    passWords: new Int32Array(passes.buffer),
    likelihood: new Float64Array(MOST_MOVES * 4).fill(1),
  };
}

/** Both are of the same situation. */
export function copyHistory(from: TileHistory, to: TileHistory): void {
  to.tiles = from.tiles;
  to.face.set(from.face);
  to.holder.set(from.holder);
  to.fixed.set(from.fixed);
  to.wall.set(from.wall);
  to.racks.set(from.racks);
  to.passes.set(from.passes);
  to.likelihood.set(from.likelihood);
}

export function holderOf(history: TileHistory, tile: number, move: number): number {
  return history.holder[tile * COLUMNS + move]!;
}

/** From this move on the tile is held by this seat. */
export function setHolderFrom(history: TileHistory, tile: number, move: number, seat: number): void {
  history.holder.fill(seat, tile * COLUMNS + move, (tile + 1) * COLUMNS);
}

/** From the move on each of the two tiles goes the other's way. */
export function swapHoldersAfter({ holder }: TileHistory, a: number, b: number, move: number): void {
  for (let next = move + 1; next < COLUMNS; next++) {
    const seat = holder[a * COLUMNS + next]!;
    holder[a * COLUMNS + next] = holder[b * COLUMNS + next]!;
    holder[b * COLUMNS + next] = seat;
  }
}

/** Numbers the tiles that the seat gives in this move. */
export function addGivenTiles(history: TileHistory, move: number): void {
  const { seat, past } = history.situation;
  const { gave, toward } = past[move]!;
  for (const face of gave) {
    const tile = history.tiles++;
    history.face[tile] = face;
    history.fixed[tile] = 0;
    setHolderFrom(history, tile, 0, seat);
    setHolderFrom(history, tile, move + 1, (seat + toward) % 4);
  }
}

/** Adds one tile to the counts of `racks` and `passes` along its whole path, or takes it out of them. */
export function addToCounts(history: TileHistory, tile: number, by: 1 | -1): void {
  const { situation, moves, holder, face, racks, passes } = history;
  const row = tile * COLUMNS;
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

/** What the histories of a batch are rebuilt from. */
export interface StoredHistories {
  /** Moves that have been sampled. */
  readonly moves: number;
  readonly tiles: number;
  readonly bytes: Uint8Array;
  readonly likelihoods: Float64Array;
}

const STORED_BYTES = MOST_TILES * (COLUMNS + 2) + FACE_COUNT;

/** All are of the same situation, with so many of its moves sampled. */
export function storeHistories(histories: readonly TileHistory[], moves: number): StoredHistories {
  const bytes = new Uint8Array(histories.length * STORED_BYTES);
  const likelihoods = new Float64Array(histories.length * MOST_MOVES * 4);
  for (const [n, history] of histories.entries()) {
    let at = n * STORED_BYTES;
    for (const part of partsOf(history)) {
      bytes.set(part, at);
      at += part.length;
    }
    likelihoods.set(history.likelihood, n * MOST_MOVES * 4);
  }
  return { moves, tiles: histories[0]!.tiles, bytes, likelihoods };
}

/** Into histories of the same situation or of a later one of the same round. */
export function loadHistories(stored: StoredHistories, histories: readonly TileHistory[]): void {
  for (const [n, history] of histories.entries()) {
    let at = n * STORED_BYTES;
    for (const part of partsOf(history)) {
      part.set(stored.bytes.subarray(at, at + part.length));
      at += part.length;
    }
    const from = n * MOST_MOVES * 4;
    history.likelihood.set(stored.likelihoods.subarray(from, from + MOST_MOVES * 4));
    history.tiles = stored.tiles;
    recount(history);
  }
}

function partsOf({ face, holder, fixed, wall }: TileHistory): readonly Uint8Array[] {
  return [face, holder, fixed, wall];
}
