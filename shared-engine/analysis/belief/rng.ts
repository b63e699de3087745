// A row of random numbers from one key: the belief's own source of chance.
import { philox } from '../../kernels/philox.ts';

/** The second word of the key says what the draws are for; the playouts use others. */
const BELIEVING = 3;

export interface Draws {
  /** In [0, 1), 2³² different values. */
  uniform(): number;
  /** A whole number 0 ≤ n < bound. */
  below(bound: number): number;
}

export function createDraws(seed: number, row: number): Draws {
  const words = new Uint32Array(4);
  let drawn = 0;
  const next = (): number => {
    if (drawn % 4 === 0) philox(words, drawn / 4, row, 0, 0, seed, BELIEVING);
    return words[drawn++ % 4]!;
  };
  return {
    uniform: () => next() / 0x1_0000_0000,
    // Bounds are at most a few hundred: the excess of small remainders is below one in ten million.
    below: (bound) => next() % bound,
  };
}
