// Whether tiles can lie in a rack, or can have arrived in it (rules R2, R3).
import { type Bag, bagOf, countOf } from '../tiles/bag.ts';
import { copiesOf, FACES, type Face } from '../tiles/face.ts';
import { type LaidProblem, laidProblem } from './problem.ts';

/** Null for a rack that somebody can hold at the deal, otherwise the first reason against it. */
export function rackProblem(tiles: readonly Face[], size: number): LaidProblem | null {
  const copies = copiesProblem(bagOf(tiles), []);
  if (copies) return copies;
  return tiles.length === size ? null : laidProblem('wrong-rack-size', sizeSentence(tiles.length, size));
}

/** Null for tiles that can have arrived beside `rack`, what is left of it; otherwise the first reason against them. */
export function arrivalProblem(rack: Bag, tiles: readonly Face[], size: number): LaidProblem | null {
  if (tiles.includes('joker')) {
    return laidProblem('joker-arrived', 'A joker is never passed, so none can have come.', 'joker');
  }
  const copies = copiesProblem(rack, tiles);
  if (copies) return copies;
  return tiles.length === size ? null : laidProblem('wrong-arrival-size', sizeSentence(tiles.length, size));
}

/** How many more tiles of each face can be laid beside these, by face index. */
export function copiesLeft(rack: Bag): Bag {
  return FACES.map((face) => Math.max(0, copiesOf(face) - countOf(rack, face)));
}

function copiesProblem(rack: Bag, tiles: readonly Face[]): LaidProblem | null {
  const all = bagOf(tiles).map((count, face) => count + rack[face]!);
  const face = FACES.find((one) => countOf(all, one) > copiesOf(one));
  if (face === undefined) return null;
  const message = `There are ${copiesOf(face)} of this tile in the set, and here are ${countOf(all, face)}.`;
  return laidProblem('too-many-copies', message, face);
}

function sizeSentence(laid: number, size: number): string {
  const more = size - laid;
  return more > 0 ? `Lay ${tilesOf(more)} more.` : `Take ${tilesOf(-more)} away.`;
}

function tilesOf(count: number): string {
  return count === 1 ? 'one tile' : `${count} tiles`;
}
