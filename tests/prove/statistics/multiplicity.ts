// What looking at several values at once does: adjusted p-values, and how good the best of them looks by chance.

/** Each times the number of questions, at most 1. */
export function bonferroni(ps: readonly number[]): number[] {
  return ps.map((p) => Math.min(1, p * ps.length));
}

/** Step-down (Holm 1979): the smallest times n, the next times n − 1, never falling; in the order given. */
export function holm(ps: readonly number[]): number[] {
  const order = ps.map((_, at) => at).sort((a, b) => ps[a]! - ps[b]!);
  const adjusted = new Array<number>(ps.length).fill(1);
  let least = 0;
  for (const [rank, at] of order.entries()) {
    least = Math.max(least, Math.min(1, ps[at]! * (ps.length - rank)));
    adjusted[at] = least;
  }
  return adjusted;
}

/**
 * Expected largest of n independent standard normal values, by Simpson's rule on ∫ (1 − Φⁿ(x) − Φⁿ(−x)) dx over
 * x > 0. Reporting the value that was chosen as best overstates it by this many standard errors.
 */
export function expectedMaximum(n: number): number {
  const steps = 4000;
  const end = 10;
  const width = end / steps;
  let below = 0.5;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const x = i * width;
    if (i > 0) below += (width / 6) * (density(x - width) + 4 * density(x - width / 2) + density(x));
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * (1 - below ** n - (1 - below) ** n);
  }
  return (sum * width) / 3;
}

function density(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
}
