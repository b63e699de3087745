// Finds the setting that a variable of the environment was meant to be: a misspelled one would be ignored in silence.

/** In a short name two letters more or less make another word: HOME is not a misspelled HOST. */
const SHORT = 6;

/** The name in `settings` that is at most two letters off, one where it is short; null where there is none. */
export function meantSetting(name: string, settings: readonly string[]): string | null {
  if (settings.includes(name)) return null;
  return settings.find((known) => editDistance(name, known) <= (known.length < SHORT ? 1 : 2)) ?? null;
}

/** Letters to insert, remove or replace, or neighbors to swap, on the way from one text to the other. */
function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const isSame = from[row - 1] === to[column - 1];
      const isSwap = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      current[column] = Math.min(
        last[column]! + 1,
        current[column - 1]! + 1,
        last[column - 1]! + (isSame ? 0 : 1),
        isSwap ? beforeLast[column - 2]! + 1 : Number.POSITIVE_INFINITY,
      );
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length]!;
}
