// Reads the numbers out of a review and out of its sentences, so that the two can be held together.

/** Every number anywhere in a value. */
export function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(numbersIn);
  if (value !== null && typeof value === 'object') return Object.values(value).flatMap(numbersIn);
  return [];
}

const NUMBER_WORDS = ['both', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Numbers a reader meets in a sentence, without those in the names of tiles and sections, in "100 games", "in 10" and "the other three" players. */
export function numbersInText(sentence: string, sections: readonly string[]): number[] {
  const bare = sections
    .reduce((text, section) => text.replaceAll(section, ''), sentence)
    .replaceAll(/\b[1-9] (bam|crak|dot)\b/g, '')
    .replaceAll('in 100 games', '')
    .replaceAll('the other three', '')
    .replaceAll(/\bin 10\b/g, '')
    .replaceAll(/\b(\d{1,3}),(\d{3})\b/g, '$1$2');
  const digits = (bare.match(/\d+(\.\d+)?/g) ?? []).map(Number);
  const spelt = NUMBER_WORDS.flatMap((word, index) =>
    new RegExp(`\\b${word}\\b`, 'i').test(bare) ? [index + 2] : [],
  );
  return [...digits, ...spelt];
}

/** These numbers as they are and as a sentence shows them: whole, to one decimal, or to the next tenth above or below. */
export function shownAs(numbers: readonly number[]): Set<number> {
  return new Set(
    numbers.flatMap((value) => [
      value,
      Math.round(value),
      Number((Math.round(value * 10) / 10).toFixed(1)),
      Math.ceil(value * 10) / 10,
      Math.floor(value * 10) / 10,
    ]),
  );
}

/** Shares as a sentence shows them, and how many of something there are in ten games: so many in 10. */
export function inTen(shares: readonly number[]): number[] {
  return shares.filter((share) => share >= 0 && share <= 3).map((share) => Math.round(10 * share));
}
