// The play after the exchange as plain data: a union by phase, every tile accounted for.
import { neighbour, type Seat } from '../../rules/deal/seat.ts';
import { type Bag, EMPTY_BAG } from '../../rules/tiles/bag.ts';
import { type Face, type Four, faceIndex } from '../../rules/tiles/face.ts';

/** A group laid open: `size` tiles of one face, `jokers` of them jokers in its place. */
export interface ExposedGroup {
  /** Face index. */
  readonly face: number;
  readonly size: number;
  readonly jokers: number;
}

/** The tiles of one seat. */
export interface Hand {
  readonly concealed: Bag;
  readonly exposed: readonly ExposedGroup[];
}

interface OnTheTable {
  readonly hands: Four<Hand>;
  /** Face indexes in the order in which they are drawn; the first `drawn` of them are gone. */
  readonly wall: readonly number[];
  readonly drawn: number;
  /** Tiles discarded and not called, by face. A tile on offer is not among them yet. */
  readonly discards: Bag;
  /** Discards so far. */
  readonly turns: number;
}

/** `seat` holds a tile more than the others: it may exchange for jokers, finish, or must discard. */
export interface Turn extends OnTheTable {
  readonly phase: 'turn';
  readonly seat: Seat;
}

/** The others may call the tile that `from` has just discarded. */
export interface Offer extends OnTheTable {
  readonly phase: 'offer';
  readonly from: Seat;
  readonly face: number;
}

/** A seat completed a line, or the wall ran out (rule P9) and both are null. */
export interface PlayOver extends OnTheTable {
  readonly phase: 'over';
  readonly winner: Seat | null;
  /** Index into the lines of the card. */
  readonly line: number | null;
}

export type Play = Turn | Offer | PlayOver;

/** Racks as they stand after the exchange. */
export interface PlayStart {
  readonly racks: Four<Bag>;
  /** In the order in which it is drawn. */
  readonly wall: readonly Face[];
  readonly dealer: Seat;
}

export function openPlay({ racks, wall, dealer }: PlayStart): Turn {
  const [a, b, c, d] = racks;
  const hand = (concealed: Bag): Hand => ({ concealed, exposed: [] });
  return {
    phase: 'turn',
    seat: dealer,
    hands: [hand(a), hand(b), hand(c), hand(d)],
    wall: wall.map(faceIndex),
    drawn: 0,
    discards: EMPTY_BAG,
    turns: 0,
  };
}

/** The seats that may call a discard of `from`, in order of precedence (rule P8). */
export function callersAfter(from: Seat): readonly [Seat, Seat, Seat] {
  return [neighbour(from, 'right'), neighbour(from, 'across'), neighbour(from, 'left')];
}
