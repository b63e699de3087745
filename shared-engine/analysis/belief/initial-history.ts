// The history that sampling begins with: hidden tiles are dealt evenly and stay where they were dealt.
import type { Rng } from '../../kernels/index.ts';
import { FACE_COUNT, FULL_SET } from '../../rules/index.ts';
import { addGivenTiles, hiddenTilesDealt, recount, setHolderFrom, type TileHistory } from './history.ts';
import { giverAt, type Situation } from './situation.ts';

/** A tile that came to the seat although no tile of its face was hidden any more. */
interface Returning {
  readonly face: number;
  readonly move: number;
}

/**
 * Where more copies of a face came to the seat than were hidden from it, the surplus must be tiles it gave itself on
 * their way back.
 */
function returningTiles({ past, start }: Situation): readonly Returning[] {
  const left = FULL_SET.map((copies, face) => copies - start[face]!);
  return past.flatMap(({ received }, move) =>
    received.flatMap((face) => (left[face]!-- > 0 ? [] : [{ face, move }])),
  );
}

/** The moves that the initial history must know of: up to the last in which a tile returned for certain. */
export function movesKnownAtStart(situation: Situation): number {
  return 1 + (returningTiles(situation).at(-1)?.move ?? -1);
}

/** Fills a history. Tiles that return for certain are fixed to a path that leads there. */
export function initializeHistory(history: TileHistory, rng: Rng): void {
  const { situation } = history;
  const { seat, past } = situation;
  history.fixed.fill(0);
  history.wall.fill(0);
  history.likelihood.fill(1);
  history.tiles = hiddenTilesDealt(situation);
  setHolders(history);
  for (let move = 0; move < movesKnownAtStart(situation); move++) addGivenTiles(history, move);
  for (const { face, move } of returningTiles(situation)) {
    fixReturning(history, face, { holder: giverAt(seat, past[move]!.toward), move });
  }
  dealFaces(history, rng);
  recount(history);
}

/** Holders of the tiles dealt to hidden seats. */
function setHolders(history: TileHistory): void {
  const { seat, dealer } = history.situation;
  let tile = 0;
  for (let other = 0; other < 4; other++) {
    if (other === seat) continue;
    for (let n = other === dealer ? 14 : 13; n > 0; n--) setHolderFrom(history, tile++, 0, other);
  }
}

/** Who holds a tile before a move. */
interface Stop {
  readonly holder: number;
  readonly move: number;
}

/** Lets one of the tiles of this face that the seat gave come back by the move, where there is a path. */
function fixReturning(history: TileHistory, face: number, end: Stop): void {
  const { seat, past } = history.situation;
  let tile = hiddenTilesDealt(history.situation);
  for (const [given, { gave, toward }] of past.slice(0, end.move).entries()) {
    for (const other of gave) {
      const candidate = tile++;
      if (other !== face || history.fixed[candidate] === 1) continue;
      const path = pathBetween(history.situation, { holder: (seat + toward) % 4, move: given + 1 }, end);
      if (path === null) continue;
      for (const [n, holder] of path.entries()) setHolderFrom(history, candidate, given + 1 + n, holder);
      setHolderFrom(history, candidate, end.move + 1, seat);
      history.fixed[candidate] = 1;
      return;
    }
  }
}

/** Holders before each move from one stop to the other, staying wherever staying leads there; null where nothing does. */
function pathBetween(situation: Situation, from: Stop, to: Stop): number[] | null {
  if (from.move === to.move) return from.holder === to.holder ? [from.holder] : null;
  const next = (from.holder + situation.past[from.move]!.toward) % 4;
  for (const holder of [from.holder, next]) {
    if (holder === situation.seat) continue;
    const rest = pathBetween(situation, { holder, move: from.move + 1 }, to);
    if (rest !== null) return [from.holder, ...rest];
  }
  return null;
}

/** Deals faces to the hidden tiles; the wall has the remainder. */
function dealFaces(history: TileHistory, rng: Rng): void {
  const { start } = history.situation;
  const faces: number[] = [];
  for (let face = 0; face < FACE_COUNT; face++) {
    for (let n = FULL_SET[face]! - start[face]!; n > 0; n--) faces.push(face);
  }
  let size = faces.length;
  const dealt = hiddenTilesDealt(history.situation);
  for (let tile = 0; tile < dealt; tile++) {
    const drawn = rng.below(size);
    history.face[tile] = faces[drawn]!;
    faces[drawn] = faces[--size]!;
  }
  for (let n = 0; n < size; n++) history.wall[faces[n]!]!++;
}
