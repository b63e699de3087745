// The score of predicted chances.

/** Mean squared distance between chances and outcomes (Brier 1950). */
export function brier(chances: readonly number[], outcomes: readonly number[]): number {
  return chances.reduce((sum, chance, i) => sum + (chance - outcomes[i]!) ** 2, 0) / chances.length;
}
