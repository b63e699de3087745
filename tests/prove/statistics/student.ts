// Mean and deviation of a sample, and Student's t: paired and Welch's test, tail and quantile.

export interface Sample {
  readonly n: number;
  readonly mean: number;
  /** With n − 1 below. */
  readonly deviation: number;
}

/** At least two values, in two passes so that large offsets cost no digits: the rounding left over in the mean is taken out again (Chan, Golub & LeVeque 1983). */
export function sampleOf(values: readonly number[]): Sample {
  const n = values.length;
  const first = values.reduce((sum, value) => sum + value, 0) / n;
  const rest = values.reduce((sum, value) => sum + (value - first), 0);
  const squares = values.reduce((sum, value) => sum + (value - first) ** 2, 0);
  return { n, mean: first + rest / n, deviation: Math.sqrt((squares - (rest * rest) / n) / (n - 1)) };
}

export interface TTest {
  readonly t: number;
  readonly df: number;
  /** Two-sided. */
  readonly p: number;
  /** Mean difference, first less second, and its standard error. */
  readonly difference: number;
  readonly error: number;
}

/** Same-place differences of two series of one length, at least two. */
export function pairedT(first: readonly number[], second: readonly number[]): TTest {
  const { n, mean, deviation } = sampleOf(first.map((value, i) => value - second[i]!));
  return testOf(mean, deviation / Math.sqrt(n), n - 1);
}

/** Two samples whose spreads may differ (Welch 1947). */
export function welchT(first: Sample, second: Sample): TTest {
  const a = first.deviation ** 2 / first.n;
  const b = second.deviation ** 2 / second.n;
  const df = (a + b) ** 2 / (a ** 2 / (first.n - 1) + b ** 2 / (second.n - 1));
  return testOf(first.mean - second.mean, Math.sqrt(a + b), df);
}

function testOf(difference: number, error: number, df: number): TTest {
  const t = difference / error;
  return { t, df, p: twoSided(t, df), difference, error };
}

/** Chance of a value as far from 0 as t or farther. */
export function twoSided(t: number, df: number): number {
  return incompleteBeta(df / (df + t * t), df / 2, 0.5);
}

/** The point that |T| exceeds with the chance p, 0 < p < 1; by halving. */
export function studentPoint(p: number, df: number): number {
  let low = 0;
  let high = 1;
  while (twoSided(high, df) > p) high *= 2;
  for (let halving = 0; halving < 100; halving++) {
    const middle = (low + high) / 2;
    if (twoSided(middle, df) > p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Regularized incomplete beta function, by Lentz's continued fraction (DLMF 8.17.22). */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log(1 - x) + logGamma(a + b) - logGamma(a) - logGamma(b));
  const tiny = 1e-300;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let c = 1;
  let fraction = d;
  for (let m = 1; m < 1000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let change = 1;
    for (const step of [even, odd]) {
      d = 1 / (1 + step * d || tiny);
      c = 1 + step / c || tiny;
      change = c * d;
      fraction *= change;
    }
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return (front * fraction) / a;
}

/** ln Γ(x), x > 0: Stirling's series after lifting x above 15 (DLMF 5.11.1). */
function logGamma(x: number): number {
  let lifted = x;
  let product = 0;
  for (; lifted < 15; lifted++) product += Math.log(lifted);
  const inverse = 1 / (lifted * lifted);
  const series = (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse / 1680))) / lifted;
  return (lifted - 0.5) * Math.log(lifted) - lifted + Math.log(2 * Math.PI) / 2 + series - product;
}
