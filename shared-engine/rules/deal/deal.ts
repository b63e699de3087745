// How a round is dealt: by chance from a seed, or with the racks a teacher prepared; and the tiles that follow from it.
import { type Bag, bagOf, FULL_SET, facesOf, takeFrom } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import { shuffled, stream } from './random.ts';
import { neighbour, type Seat } from './seat.ts';

/** Everything about the round follows from the seed. */
export interface RandomDeal {
  /** 64 hexadecimal digits = 256 bits. Secret until the close (rule D4). */
  readonly seed: string;
  readonly dealer: Seat;
}

/** The racks are a teacher's; they hold 14 tiles for the dealer and 13 for the others, all from one set. */
export interface PreparedDeal {
  /** 64 hexadecimal digits: decides the wall, blind draws and bots, never the racks. Not opened at the close. */
  readonly seed: string;
  readonly dealer: Seat;
  readonly prepared: Four<readonly Face[]>;
}

export type Deal = RandomDeal | PreparedDeal;

export interface DealtTiles {
  readonly racks: Four<Bag>;
  /** The 99 tiles left, in the order they would be drawn. */
  readonly wall: readonly Face[];
}

export function isSeed(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text);
}

/** How many tiles a seat is dealt (rule D2). */
export function dealtSize(seat: Seat, dealer: Seat): 13 | 14 {
  return seat === dealer ? 14 : 13;
}

/** A round asks for its deal at every look, so it is laid once and kept as long as the deal itself. */
const laid = new WeakMap<Deal, DealtTiles>();

export function dealTiles(deal: Deal): DealtTiles {
  const known = laid.get(deal);
  if (known !== undefined) return known;
  const dealt = 'prepared' in deal ? layPrepared(deal) : dealByChance(deal);
  laid.set(deal, dealt);
  return dealt;
}

/**
 * Shuffles the set (D1) and hands it out (D2): thirteen tiles in turn from the dealer to the right,
 * then the dealer's fourteenth.
 */
function dealByChance({ seed, dealer }: RandomDeal): DealtTiles {
  const tiles = shuffled(facesOf(FULL_SET), stream(seed, 'deal'));
  const hands: [Face[], Face[], Face[], Face[]] = [[], [], [], []];
  let seat = dealer;
  for (const tile of tiles.slice(0, 53)) {
    hands[seat].push(tile);
    seat = neighbour(seat, 'right');
  }
  return { racks: bagsOf(hands), wall: tiles.slice(53) };
}

function layPrepared({ seed, prepared }: PreparedDeal): DealtTiles {
  const rest = takeFrom(FULL_SET, prepared.flat()) ?? [];
  return { racks: bagsOf(prepared), wall: shuffled(facesOf(rest), stream(seed, 'wall')) };
}

function bagsOf([a, b, c, d]: Four<readonly Face[]>): Four<Bag> {
  return [bagOf(a), bagOf(b), bagOf(c), bagOf(d)];
}
