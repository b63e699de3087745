// What a class sees of choices where no pupil may be told from the others: one made by one pupil alone can tell whose it was.
import type { StepSpread } from './spread.ts';

/** So many things with one pupil behind each: with a single one, whoever knows the others' would know it too. */
const FEWEST = 2;

/**
 * Those of `items` that may be shown: none before all have chosen, for until then a count grows at the moment in which
 * a pupil chooses; and what one pupil alone is behind only where it is not the only one of its kind.
 */
export function discreet<T>(
  items: readonly T[],
  pupilsBehind: (item: T) => number,
  allHaveChosen: boolean,
): readonly T[] {
  if (!allHaveChosen) return [];
  const single = items.filter((item) => pupilsBehind(item) === 1);
  if (single.length >= FEWEST) return items;
  return items.filter((item) => pupilsBehind(item) !== 1);
}

/** The spread with the pupils counted whose choices may not be shown, and nothing else said of those. */
export function discreetSpread(spread: StepSpread, allHaveChosen: boolean): StepSpread {
  const choices = discreet(spread.choices, ({ count }) => count, allHaveChosen);
  const aims = discreet(spread.aims, ({ count }) => count, allHaveChosen);
  const pupilsIn = (some: StepSpread['choices']) => some.reduce((sum, { count }) => sum + count, 0);
  const unshown = pupilsIn(spread.choices) - pupilsIn(choices);
  if (unshown === 0) return { ...spread, aims };
  // The cost of all together would tell that of the one that is left out.
  return { ...spread, choices, aims, unshown, loss: null, points: null, costly: null };
}
