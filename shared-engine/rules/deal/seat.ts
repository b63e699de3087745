// The four seats of a table and their positions relative to each other; turns go to the right.
import type { Four } from '../tiles/face.ts';

export const SEATS = [0, 1, 2, 3] as const;
/** A seat number; seat + 1 sits to its right (modulo 4). */
export type Seat = (typeof SEATS)[number];

export const DIRECTIONS = ['right', 'across', 'left'] as const;
export type Direction = (typeof DIRECTIONS)[number];

const OFFSETS: Readonly<Record<Direction, number>> = { right: 1, across: 2, left: 3 };

/** The seat that a pass in this direction goes to. */
export function neighbor(seat: Seat, direction: Direction): Seat {
  return SEATS[(seat + OFFSETS[direction]) % 4]!;
}

/** The seat that a pass in this direction comes from. */
export function giverTo(seat: Seat, direction: Direction): Seat {
  return SEATS[(seat + 4 - OFFSETS[direction]) % 4]!;
}

/** One value a seat. */
export function forFour<T>(make: (seat: Seat) => T): Four<T> {
  return [make(0), make(1), make(2), make(3)];
}

/** The four values with one of them changed. */
export function withSeat<T>(values: Four<T>, seat: Seat, value: T): Four<T> {
  return forFour((other) => (other === seat ? value : values[other]));
}
