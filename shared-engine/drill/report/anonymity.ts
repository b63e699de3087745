// Which choices of a class may be shown where the report names nobody: a choice that one player alone made may tell who made it.
import type { StepSpread } from './spread.ts';

/** At least so many choices with one player each: from a single one its player could be found by exclusion. */
const MIN_SINGLE_CHOICES = 2;

/**
 * The items that may be shown. None before all have chosen, because a count that grows shows who chose just then. An
 * item of one player alone is shown only if there is another such item.
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

/** The spread without the choices that may not be shown; `hidden` counts their players. */
export function anonymizedSpread(spread: StepSpread, allHaveChosen: boolean): StepSpread {
  const choices = anonymized(spread.choices, ({ count }) => count, allHaveChosen);
  const aims = anonymized(spread.aims, ({ count }) => count, allHaveChosen);
  const playersIn = (some: StepSpread['choices']) => some.reduce((sum, { count }) => sum + count, 0);
  const hidden = playersIn(spread.choices) - playersIn(choices);
  if (hidden === 0) return { ...spread, aims };
  // The cost of all choices together would give away the cost of a hidden one.
  return { ...spread, choices, aims, hidden, loss: null, winsLost: null, costly: null };
}
