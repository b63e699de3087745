// How a round is dealt: at random from a seed, or with the racks that a teacher prepared.
import { type Bag, bagOf, FULL_SET, facesOf, takeFrom } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import { shuffled, stream } from './random.ts';
import { neighbor, type Seat } from './seat.ts';

/** All tiles follow from the seed. */
export interface RandomDeal {
  /** 64 hexadecimal digits = 256 bits. Secret until the close (rule D4). */
  readonly seed: string;
  readonly dealer: Seat;
}

/** A teacher chose the racks; they hold 14 tiles for the dealer and 13 for the others, all from one set. */
export interface PreparedDeal {
  /** 64 hexadecimal digits: decides the wall, blind draws and bots, never the racks. Not revealed at the close. */
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

/** Each view of a round needs its racks as dealt, so they are dealt once and cached as long as the deal lives. */
const cache = new WeakMap<Deal, DealtTiles>();

export function dealTiles(deal: Deal): DealtTiles {
  const known = cache.get(deal);
  if (known !== undefined) return known;
  const dealt = 'prepared' in deal ? dealPrepared(deal) : dealAtRandom(deal);
  cache.set(deal, dealt);
  return dealt;
}

/**
 * Shuffles the set (rule D1) and deals it (rule D2): thirteen tiles each in turn, from the dealer to the right, then
 * the dealer's fourteenth.
 */
function dealAtRandom({ seed, dealer }: RandomDeal): DealtTiles {
  const tiles = shuffled(facesOf(FULL_SET), stream(seed, 'deal'));
  const racks: [Face[], Face[], Face[], Face[]] = [[], [], [], []];
  let seat = dealer;
  for (const tile of tiles.slice(0, 53)) {
    racks[seat].push(tile);
    seat = neighbor(seat, 'right');
  }
  return { racks: bagsOf(racks), wall: tiles.slice(53) };
}

function dealPrepared({ seed, prepared }: PreparedDeal): DealtTiles {
  const rest = takeFrom(FULL_SET, prepared.flat()) ?? [];
  return { racks: bagsOf(prepared), wall: shuffled(facesOf(rest), stream(seed, 'wall')) };
}

function bagsOf([a, b, c, d]: Four<readonly Face[]>): Four<Bag> {
  return [bagOf(a), bagOf(b), bagOf(c), bagOf(d)];
}
