// Counter-based random numbers: the same counter and key give the same words everywhere, in any order of asking.

const ROUNDS = 10;
const M0 = 0xd2511f53;
const M1 = 0xcd9e8d57;
const W0 = 0x9e3779b9;
const W1 = 0xbb67ae85;

/** The second word of a key says what its numbers are for. */
export const STREAMS = { noise: 1, blind: 2, belief: 3 } as const;

/** The upper 32 bits of a product of two unsigned 32-bit words. */
function mulHigh(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = aHigh * bLow + ((aLow * bLow) >>> 16);
  const other = aLow * bHigh + (middle & 0xffff);
  return (aHigh * bHigh + Math.floor(middle / 0x10000) + (other >>> 16)) >>> 0;
}

/**
 * Philox4x32-10 (Salmon, Moraes, Dror, Shaw: "Parallel random numbers: as easy as 1, 2, 3", SC 2011): the counter
 * in the four words becomes four random words, by a key of two words.
 */
export function philox(words: Uint32Array, keyLow: number, keyHigh: number): void {
  let x0 = words[0]!;
  let x1 = words[1]!;
  let x2 = words[2]!;
  let x3 = words[3]!;
  let key0 = keyLow >>> 0;
  let key1 = keyHigh >>> 0;
  for (let round = 0; round < ROUNDS; round++) {
    const high0 = mulHigh(M0, x0);
    const low0 = Math.imul(M0, x0) >>> 0;
    const high1 = mulHigh(M1, x2);
    const low1 = Math.imul(M1, x2) >>> 0;
    x0 = (high1 ^ x1 ^ key0) >>> 0;
    x1 = low1;
    x2 = (high0 ^ x3 ^ key1) >>> 0;
    x3 = low0;
    key0 = (key0 + W0) >>> 0;
    key1 = (key1 + W1) >>> 0;
  }
  words[0] = x0;
  words[1] = x1;
  words[2] = x2;
  words[3] = x3;
}

/** A sequence of random numbers. */
export interface Rng {
  /** In [0, 1), 2³² different values. */
  uniform(): number;
  /** A whole number 0 ≤ n < bound. */
  below(bound: number): number;
}

/** The sequence of a seed and a row; others by the same seed are independent of it. */
export function createRng(seed: number, row: number): Rng {
  const words = new Uint32Array(4);
  let drawn = 0;
  const next = (): number => {
    if (drawn % 4 === 0) {
      words[0] = drawn / 4;
      words[1] = row;
      words[2] = 0;
      words[3] = 0;
      philox(words, seed, STREAMS.belief);
    }
    return words[drawn++ % 4]!;
  };
  return {
    uniform: () => next() / 0x1_0000_0000,
    // Bounds are at most a few hundred: the excess of small remainders is below one in ten million.
    below: (bound) => next() % bound,
  };
}
