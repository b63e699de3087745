// What a simulated seat misjudges, and the random words of blind passes, by a counter-based generator.

/** The second word of the key says what the numbers are for, as `STREAMS` in `kernels/philox.ts`. */
const NOISE: u32 = 1;
const BLIND: u32 = 2;

const words: usize = memory.data(16, 16);

/** Where 1024 quantiles of the noise stand, as f64. */
let quantiles: usize = 0;
let seed: u32 = 0;
let deal: u32 = 0;

export function setQuantiles(at: usize): void {
  quantiles = at;
}

/** The seed of a batch and the key of one of its deals. */
export function setNoiseKey(seedWord: u32, dealKey: u32): void {
  seed = seedWord;
  deal = dealKey;
}

/** Philox4x32-10 (Salmon, Moraes, Dror, Shaw, SC 2011): the counter of four words at `at` becomes four random words. */
function philox(at: usize, keyLow: u32, keyHigh: u32): void {
  let x0 = load<u32>(at);
  let x1 = load<u32>(at, 4);
  let x2 = load<u32>(at, 8);
  let x3 = load<u32>(at, 12);
  let key0 = keyLow;
  let key1 = keyHigh;
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
  store<u32>(at, x0);
  store<u32>(at, x1, 4);
  store<u32>(at, x2, 8);
  store<u32>(at, x3, 12);
}

function setCounter(at: usize, seat: u32, step: u32, block: u32): void {
  store<u32>(at, deal);
  store<u32>(at, seat, 4);
  store<u32>(at, step, 8);
  store<u32>(at, block, 12);
}

/** One value a face, 36 of them as f64, to `out`. */
export function drawNoise(out: usize, seat: u32, step: u32): void {
  for (let face: u32 = 0; face < 36; face += 2) {
    const half = face & 7;
    if (half === 0) {
      setCounter(words, seat, step, face >>> 3);
      philox(words, seed, NOISE);
    }
    const word = load<u32>(words + (half >>> 1) * 4);
    store<f64>(out + face * 8, load<f64>(quantiles + (word & 1023) * 8));
    store<f64>(out + face * 8, load<f64>(quantiles + ((word >>> 16) & 1023) * 8), 8);
  }
}

/** Four words by which the blind tiles of one seat are drawn, to `out`. */
export function drawBlindWords(out: usize, seat: u32, step: u32): void {
  setCounter(out, seat, step, 0);
  philox(out, seed, BLIND);
}
