// The play after the exchange as plain data: a union by phase, every tile accounted for.
import {
  type Bag,
  EMPTY_BAG,
  type Face,
  type Four,
  faceIndex,
  neighbor,
  type Seat,
} from '../../rules/index.ts';

/** `size` tiles of one face, `jokers` of them jokers in its place. */
export interface ExposedGroup {
  /** Face index. */
  readonly face: number;
  readonly size: number;
  readonly jokers: number;
}

/** The tiles of one seat. */
export interface Holding {
  readonly concealed: Bag;
  readonly exposed: readonly ExposedGroup[];
}

interface PlayTable {
  readonly holdings: Four<Holding>;
  /** Face indexes in the order in which they are drawn; the first `drawn` of them are gone. */
  readonly wall: readonly number[];
  readonly drawn: number;
  /** Tiles discarded and not called, by face. A tile on offer is not among them yet. */
  readonly discards: Bag;
  /** Discards so far. */
  readonly turns: number;
}

/** `seat` holds a tile more than the others: it may exchange for jokers, finish, or must discard. */
export interface Turn extends PlayTable {
  readonly phase: 'turn';
  readonly seat: Seat;
}

/** The others may call the tile that `from` has just discarded. */
export interface Offer extends PlayTable {
  readonly phase: 'offer';
  readonly from: Seat;
  readonly face: number;
}

/** A seat completed a pattern, or the wall ran out (rule P9) and both are null. */
export interface PlayOver extends PlayTable {
  readonly phase: 'over';
  readonly winner: Seat | null;
  /** Index into the patterns of the card. */
  readonly pattern: number | null;
}

export type SimulatedPlay = Turn | Offer | PlayOver;

/** Racks as they stand after the exchange. */
export interface PlayStart {
  readonly racks: Four<Bag>;
  /** In the order in which it is drawn. */
  readonly wall: readonly Face[];
  readonly dealer: Seat;
}

export function openPlay({ racks, wall, dealer }: PlayStart): Turn {
  const [a, b, c, d] = racks;
  const holding = (concealed: Bag): Holding => ({ concealed, exposed: [] });
  return {
    phase: 'turn',
    seat: dealer,
    holdings: [holding(a), holding(b), holding(c), holding(d)],
    wall: wall.map(faceIndex),
    drawn: 0,
    discards: EMPTY_BAG,
    turns: 0,
  };
}

/** The seats that may call a discard of `from`, in order of precedence (rule P8). */
export function callersAfter(from: Seat): readonly [Seat, Seat, Seat] {
  return [neighbor(from, 'right'), neighbor(from, 'across'), neighbor(from, 'left')];
}
