// The source of every random choice in the engine: named streams of one seed, expanded by seedrandom.
import seedrandom from 'seedrandom';

/** How many different values one draw of the generator has: 2³². */
const VALUES = 0x1_0000_0000;

/** A stream of draws. The same seed and name give the same draws on every machine. */
export interface Random {
  /** A whole number 0 ≤ n < bound, each equally likely; bound 1–2³². */
  below(bound: number): number;
}

/** The stream `name` of `seed`. Streams of different names are independent: drawing from one never changes another. */
export function stream(seed: string, name: string): Random {
  const generator = seedrandom(`${seed}/${name}`);
  return {
    below(bound) {
      // Draws beyond the last whole multiple of `bound` are discarded; they would make small remainders likelier.
      const limit = Math.floor(VALUES / bound) * bound;
      for (;;) {
        const value = generator.int32() >>> 0;
        if (value < limit) return value % bound;
      }
    },
  };
}

/** A deal's seed: 64 hexadecimal digits from `random`, for deals that must come out the same again. */
export function seedFrom(random: Random): string {
  return Array.from({ length: 64 }, () => random.below(16).toString(16)).join('');
}

/** A new array with the items in random order: Fisher–Yates (Knuth, TAOCP 2, algorithm P). */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const result = [...items];
  for (let last = result.length - 1; last > 0; last--) {
    const other = random.below(last + 1);
    [result[last], result[other]] = [result[other]!, result[last]!];
  }
  return result;
}

/** `count` of the items, drawn at random without replacement, in the order drawn. */
export function drawn<T>(items: readonly T[], count: number, random: Random): T[] {
  return shuffled(items, random).slice(0, count);
}
