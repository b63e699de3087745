// Draws one of several items by exact integer weights of any size; mostly one random word is enough.
import type { Random } from '../rules/index.ts';

const WORD = 0x1_0000_0000;
const BIG_WORD = 0x1_0000_0000n;

/** Draws the place of one weight, each as likely as its share of the sum; at least one weight, none 0. */
export interface WeightedDraw {
  /** Sum of the weights. */
  readonly sum: bigint;
  draw(random: Random): number;
}

/**
 * The point drawn is a fraction 0.w₀w₁w₂… in base 2³² with endless digits; the place is the one in whose part
 * of the unit interval it falls. Digits are drawn only until no boundary between two parts lies within the range
 * that is still open, so no weight is rounded and none is favored.
 */
export function weightedDraw(weights: readonly bigint[]): WeightedDraw {
  const boundaries: bigint[] = [];
  let sum = 0n;
  for (const weight of weights) {
    sum += weight;
    boundaries.push(sum);
  }
  // Each boundary in words: the whole words below it, and whether it lies exactly on a word.
  const below = Float64Array.from(boundaries, (boundary) => Number((boundary * BIG_WORD) / sum));
  const exact = boundaries.map((boundary) => (boundary * BIG_WORD) % sum === 0n);

  function byDigits(first: number, random: Random): number {
    let point = BigInt(first);
    let span = BIG_WORD;
    for (;;) {
      point = point * BIG_WORD + BigInt(random.below(WORD));
      span *= BIG_WORD;
      const place = boundaries.findIndex((boundary) => boundary * span > point * sum);
      if (boundaries[place]! * span >= (point + 1n) * sum) return place;
    }
  }

  return {
    sum,
    draw(random) {
      const word = random.below(WORD);
      let low = 0;
      let high = below.length - 1;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (below[middle]! > word) high = middle;
        else low = middle + 1;
      }
      const certain = low === 0 || below[low - 1]! < word || exact[low - 1]!;
      return certain ? low : byDigits(word, random);
    },
  };
}
