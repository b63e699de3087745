// From a seed to a shuffled wall and four racks.
import { type Bag, bagOf, FULL_SET, facesOf } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import { shuffled, stream } from './random.ts';
import { neighbour, type Seat } from './seat.ts';

/** How a round was dealt; everything else about it follows from this. */
export interface Deal {
  /** 64 hexadecimal digits = 256 bits. Secret until the close (rule D4). */
  readonly seed: string;
  readonly dealer: Seat;
}

export interface DealtTiles {
  readonly racks: Four<Bag>;
  /** The 99 tiles left, in the order they would be drawn. */
  readonly wall: readonly Face[];
}

export function isSeed(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text);
}

/**
 * Shuffles the set (D1) and hands it out (D2): thirteen tiles in turn from the dealer to the right,
 * then the dealer's fourteenth.
 */
export function dealTiles({ seed, dealer }: Deal): DealtTiles {
  const tiles = shuffled(facesOf(FULL_SET), stream(seed, 'deal'));
  const hands: [Face[], Face[], Face[], Face[]] = [[], [], [], []];
  let seat = dealer;
  for (const tile of tiles.slice(0, 53)) {
    hands[seat].push(tile);
    seat = neighbour(seat, 'right');
  }
  const [a, b, c, d] = hands;
  return { racks: [bagOf(a), bagOf(b), bagOf(c), bagOf(d)], wall: tiles.slice(53) };
}
