// What a simulated seat misjudges, and the words of blind draws, by a counter-based generator.

/** The second word of the key says what the draws are for. */
const MISJUDGING: u32 = 1;
const DRAWING: u32 = 2;

const words: usize = memory.data(16, 16);

/** Where 1024 quantiles of the noise stand, as f64. */
let quantiles: usize = 0;

export function setQuantiles(at: usize): void {
  quantiles = at;
}

/** Philox4x32-10 (Salmon, Moraes, Dror, Shaw, SC 2011): four words to `out`. */
function philox(out: usize, c0: u32, c1: u32, c2: u32, c3: u32, k0: u32, k1: u32): void {
  let x0 = c0;
  let x1 = c1;
  let x2 = c2;
  let x3 = c3;
  let key0 = k0;
  let key1 = k1;
  for (let round = 0; round < 10; round++) {
    const first = <u64>0xd2511f53 * <u64>x0;
    const second = <u64>0xcd9e8d57 * <u64>x2;
    x0 = <u32>(second >>> 32) ^ x1 ^ key0;
    x1 = <u32>second;
    x2 = <u32>(first >>> 32) ^ x3 ^ key1;
    x3 = <u32>first;
    key0 += 0x9e3779b9;
    key1 += 0xbb67ae85;
  }
  store<u32>(out, x0);
  store<u32>(out, x1, 4);
  store<u32>(out, x2, 8);
  store<u32>(out, x3, 12);
}

/** One draw a face, 36 of them as f64, to `out`. */
export function misjudge(out: usize, seed: u32, world: u32, seat: u32, step: u32): void {
  for (let face: u32 = 0; face < 36; face += 2) {
    const half = face & 7;
    if (half === 0) philox(words, world, seat, step, face >>> 3, seed, MISJUDGING);
    const word = load<u32>(words + (half >>> 1) * 4);
    store<f64>(out + face * 8, load<f64>(quantiles + (word & 1023) * 8));
    store<f64>(out + face * 8, load<f64>(quantiles + ((word >>> 16) & 1023) * 8), 8);
  }
}

/** Four words for the draws of a blind pass of one seat, to `out`. */
export function drawWords(out: usize, seed: u32, world: u32, seat: u32, step: u32): void {
  philox(out, world, seat, step, 0, seed, DRAWING);
}
