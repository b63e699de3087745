// What a class sees of choices where no player may be told from the others: one made by one player alone can tell whose it was.
import type { StepSpread } from './spread.ts';

/** So many things with one player behind each: with a single one, whoever knows the others' would know it too. */
const MIN_SINGLE_CHOICES = 2;

/**
 * Those of `items` that may be shown: none before all have chosen, for until then a count grows at the moment in which
 * a player chooses; and what one player alone is behind only where it is not the only one of its kind.
 */
export function anonymized<T>(
  items: readonly T[],
  playersBehind: (item: T) => number,
  allHaveChosen: boolean,
): readonly T[] {
  if (!allHaveChosen) return [];
  const single = items.filter((item) => playersBehind(item) === 1);
  if (single.length >= MIN_SINGLE_CHOICES) return items;
  return items.filter((item) => playersBehind(item) !== 1);
}

/** The spread with the players counted whose choices may not be shown, and nothing else said of those. */
export function anonymizedSpread(spread: StepSpread, allHaveChosen: boolean): StepSpread {
  const choices = anonymized(spread.choices, ({ count }) => count, allHaveChosen);
  const aims = anonymized(spread.aims, ({ count }) => count, allHaveChosen);
  const playersIn = (some: StepSpread['choices']) => some.reduce((sum, { count }) => sum + count, 0);
  const hidden = playersIn(spread.choices) - playersIn(choices);
  if (hidden === 0) return { ...spread, aims };
  // The cost of all together would tell that of the one that is left out.
  return { ...spread, choices, aims, hidden, loss: null, winsLost: null, costly: null };
}
