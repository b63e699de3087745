// The few statistics that the outside checks need, exact or by their textbook formula.

function choose(n: number, k: number): bigint {
  let result = 1n;
  for (let i = 1; i <= k; i++) result = (result * BigInt(n - k + i)) / BigInt(i);
  return result;
}

/** Probability of k marked items among n drawn without putting back from N items of which r are marked; exact integers, one division. */
export function hypergeometric(k: number, n: number, r: number, N: number): number {
  const scale = 10n ** 24n;
  const ways = choose(r, k) * choose(N - r, n - k);
  return Number((ways * scale) / choose(N, n)) / 1e24;
}

/** Pearson's sum of (observed − expected)² / expected. */
export function chiSquare(observed: readonly number[], expected: readonly number[]): number {
  return observed.reduce((sum, count, i) => sum + (count - expected[i]!) ** 2 / expected[i]!, 0);
}

/**
 * Upper critical values of the chi-square distribution at .05 and .01 by degrees of freedom.
 * Source: printed chi-square tables.
 */
export const CHI_SQUARE: Readonly<Record<number, { readonly at05: number; readonly at01: number }>> = {
  1: { at05: 3.84146, at01: 6.6349 },
  5: { at05: 11.0705, at01: 15.08627 },
  10: { at05: 18.30704, at01: 23.20925 },
  23: { at05: 35.17246, at01: 41.6384 },
};
