// Which suit a rack holds most of, and how likely each is to be it: light enough for the words of a review.
import { type Direction, FACES, faceIndex, numbered, SUITS, type Suit } from '../../rules/index.ts';

export interface NeighborSuits {
  readonly toward: Direction;
  /** For each suit the probability that the neighbor holds more of it than of either other suit. */
  readonly longest: Readonly<Record<Suit, number>>;
}

/** How often a suit is the longest of a rack at the close, whatever was passed. */
export const USUAL = 0.275;

/** By suit, the faces of its tiles. */
const FACES_OF = SUITS.map((suit) =>
  FACES.filter((face) => numbered(face)?.suit === suit).map((face) => faceIndex(face)),
);

/** Place in `SUITS` of the suit that the rack at `racks[at..at + 36)` has most tiles of; null where two have as many. */
export function longestSuit(racks: ArrayLike<number>, at: number): number | null {
  const held = FACES_OF.map((faces) => faces.reduce((sum, face) => sum + racks[at + face]!, 0));
  const most = Math.max(...held);
  const place = held.indexOf(most);
  return held.lastIndexOf(most) === place ? place : null;
}
