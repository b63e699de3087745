// Every random choice of the engine comes from here: a named stream of one seed, expanded by seedrandom.
import seedrandom from 'seedrandom';

/** How many different words one draw of the generator can give: 2³². */
const WORDS = 0x1_0000_0000;

/** Draws from one stream. The same seed and name give the same draws on every machine. */
export interface Random {
  /** A whole number 0 ≤ n < bound, each equally likely; bound 1–2³². */
  below(bound: number): number;
}

/** The stream `name` of `seed`. Different names give independent streams, so one can be used without moving another. */
export function stream(seed: string, name: string): Random {
  const generator = seedrandom(`${seed}/${name}`);
  return {
    below(bound) {
      // Draws past the last whole multiple of bound are thrown away, or small remainders would be likelier.
      const limit = Math.floor(WORDS / bound) * bound;
      for (;;) {
        const word = generator.int32() >>> 0;
        if (word < limit) return word % bound;
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

/** `count` of the items drawn at random without putting back, in draw order. */
export function drawn<T>(items: readonly T[], count: number, random: Random): T[] {
  return shuffled(items, random).slice(0, count);
}
