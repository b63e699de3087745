// What a class sees of choices where no pupil may be told from the others: one made by one pupil alone can tell whose it was.
import type { StepSpread } from './spread.ts';

/** So many things with one pupil behind each: with a single one, whoever knows the others' would know it too. */
const FEWEST = 2;

/**
 * Those of `items` that may be shown. What one pupil alone is behind is shown only once all have chosen, for until
 * then it would appear at the moment in which that pupil does; and only where it is not the only one of its kind.
 */
export function discreet<T>(
  items: readonly T[],
  pupilsBehind: (item: T) => number,
  allHaveChosen: boolean,
): readonly T[] {
  const single = items.filter((item) => pupilsBehind(item) === 1);
  if (allHaveChosen && single.length >= FEWEST) return items;
  return items.filter((item) => pupilsBehind(item) !== 1);
}

/** The spread with the choices that may not be shown counted, and nothing else said of them. */
export function discreetSpread(spread: StepSpread, allHaveChosen: boolean): StepSpread {
  const choices = discreet(spread.choices, ({ count }) => count, allHaveChosen);
  const aims = discreet(spread.aims, ({ count }) => count, allHaveChosen);
  const alone = spread.choices.length - choices.length;
  if (alone === 0) return { ...spread, aims };
  // The cost of all together would tell that of the one that is left out.
  return { ...spread, choices, aims, alone, loss: null, points: null, costly: null };
}
