// What a simulated seat misjudges, keyed by (seed, world, seat, step, face): the same for every alternative.
import { log2 } from '../../kernels/log2.ts';
import { philox } from '../../kernels/philox.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';

/** The second word of the key says what the draws are for. */
const MISJUDGING = 1;
const DRAWING = 2;

const LEVELS = 1024;
/** One seat at one step uses 18 words, two faces a word. */
const BLOCKS = FACE_COUNT / 8;

/** Quantiles of the standard Gumbel distribution, −ln(−ln u) at the middle of each of 1024 equal parts. */
export const GUMBEL: Float64Array = Float64Array.from({ length: LEVELS }, (_, level) => {
  const u = (level + 0.5) / LEVELS;
  return -log2(-log2(u) * Math.LN2) * Math.LN2;
});

const words = new Uint32Array(4);

/** One Gumbel draw a face into `noise[at..at + 36)`. */
export function misjudge(
  noise: Float64Array,
  at: number,
  seed: number,
  world: number,
  seat: number,
  step: number,
): void {
  for (let block = 0; block <= BLOCKS; block++) {
    philox(words, world, seat, step, block, seed, MISJUDGING);
    const left = Math.min(8, FACE_COUNT - block * 8);
    for (let i = 0; i < left; i++) {
      const word = words[i >> 1]!;
      noise[at + block * 8 + i] = GUMBEL[(i % 2 === 0 ? word : word >>> 16) & (LEVELS - 1)]!;
    }
  }
}

/** Four words for the draws of a blind pass of one seat. */
export function drawWords(out: Uint32Array, seed: number, world: number, seat: number, step: number): void {
  philox(out, world, seat, step, 0, seed, DRAWING);
}
