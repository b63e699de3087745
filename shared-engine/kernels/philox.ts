// A counter-based generator: the same counter and key give the same four words everywhere, in any order of asking.

const ROUNDS = 10;
const M0 = 0xd2511f53;
const M1 = 0xcd9e8d57;
const W0 = 0x9e3779b9;
const W1 = 0xbb67ae85;

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
 * Philox4x32-10 (Salmon, Moraes, Dror, Shaw: "Parallel random numbers: as easy as 1, 2, 3", SC 2011): four words
 * into `out` for a counter of four words and a key of two.
 */
export function philox(
  out: Uint32Array,
  c0: number,
  c1: number,
  c2: number,
  c3: number,
  k0: number,
  k1: number,
): void {
  let x0 = c0 >>> 0;
  let x1 = c1 >>> 0;
  let x2 = c2 >>> 0;
  let x3 = c3 >>> 0;
  let key0 = k0 >>> 0;
  let key1 = k1 >>> 0;
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
  out[0] = x0;
  out[1] = x1;
  out[2] = x2;
  out[3] = x3;
}
