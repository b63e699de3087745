// How long to wait before the next attempt to connect.

const FIRST_MS = 500;
const LONGEST_MS = 3_000;

/**
 * Milliseconds before attempt `failures` + 1: doubling, capped, and anywhere in the upper half, so that a room
 * full of pages does not reconnect at the same moment. `random` is a number 0 ≤ random < 1.
 */
export function backoffMs(failures: number, random: number): number {
  const full = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(failures, 10));
  return Math.round(full / 2 + (full / 2) * random);
}
