// Bounds for several looks at a growing sample, so that all of them together err as often as one look would.
import { expMinus } from '../../kernels/index.ts';
import { normalQuantile } from './quantiles.ts';

/** Points of the grid that the density of a running sum is followed on, and how far it reaches in deviations. */
const POINTS = 240;
const REACH = 8;

/** Lower tail of the standard normal distribution, by its continued fraction and near 0 by its series. */
export function normalTail(z: number): number {
  const x = Math.abs(z);
  if (x > 12) return z > 0 ? 0 : 1;
  const density = expMinus((x * x) / 2) / Math.sqrt(2 * Math.PI);
  let upper: number;
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 3; n < 120; n += 2) {
      term *= (x * x) / n;
      sum += term;
    }
    upper = 0.5 - density * sum;
  } else {
    let fraction = 0;
    for (let n = 60; n > 0; n--) fraction = n / (x + fraction);
    upper = density / (x + fraction);
  }
  return z > 0 ? upper : 1 - upper;
}

/** Where the running sum stands that has crossed no bound yet: a density on evenly spaced points. */
interface Position {
  readonly from: number;
  readonly step: number;
  readonly density: Float64Array;
}

/**
 * Probability that a sum of independent normal steps stands beyond ±bound × its deviation for the first time at each
 * look; `fractions` is the share of the whole sample seen by then (Armitage, McPherson and Rowe 1969).
 */
export function crossingProbabilities(fractions: readonly number[], bounds: readonly number[]): number[] {
  let position: Position | null = null;
  let seen = 0;
  return fractions.map((fraction, look) => {
    const bound = bounds[look]! * Math.sqrt(fraction);
    const deviation = Math.sqrt(fraction - seen);
    const beyond = beyondProbability(position, deviation, bound);
    position = movedOn(position, deviation, Math.min(bound, REACH * Math.sqrt(fraction)));
    seen = fraction;
    return beyond;
  });
}

function beyondProbability(position: Position | null, deviation: number, bound: number): number {
  if (position === null) return 2 * normalTail(bound / deviation);
  return integral(
    position,
    (at) => normalTail((bound - at) / deviation) + normalTail((bound + at) / deviation),
  );
}

function movedOn(position: Position | null, deviation: number, bound: number): Position {
  const step = (2 * bound) / POINTS;
  const scale = 1 / (deviation * Math.sqrt(2 * Math.PI));
  const density = Float64Array.from({ length: POINTS + 1 }, (_, n) => {
    const to = n * step - bound;
    const reaching = (from: number): number => {
      const z = (to - from) / deviation;
      return z * z > 180 ? 0 : expMinus((z * z) / 2) * scale;
    };
    return position === null ? reaching(0) : integral(position, reaching);
  });
  return { from: -bound, step, density };
}

/** Simpson's rule. */
function integral({ from, step, density }: Position, of: (at: number) => number): number {
  let sum = 0;
  for (const [n, height] of density.entries()) {
    const weight = n === 0 || n === density.length - 1 ? 1 : n % 2 === 1 ? 4 : 2;
    sum += weight * height * of(from + n * step);
  }
  return (sum * step) / 3;
}

/**
 * How much of the error may be spent by a share of the sample: little early, as the bounds of O'Brien and Fleming do on
 * either side (Lan and DeMets 1983).
 */
export function spentBy(fraction: number, error: number): number {
  return 4 * normalTail(normalQuantile(error / 4) / Math.sqrt(fraction));
}

/** As much early as late, so that what is plain is seen early (Kim and DeMets 1987). */
export function spentEvenly(fraction: number, error: number): number {
  return fraction * error;
}

/** Bounds in deviations, one a look, that together are crossed with the probability `error` (two-sided). */
export function spendingBounds(
  fractions: readonly number[],
  error: number,
  spentUntil: typeof spentBy = spentBy,
): readonly number[] {
  let position: Position | null = null;
  let spent = 0;
  let seen = 0;
  return fractions.map((fraction) => {
    const due = spentUntil(fraction, error) - spent;
    const deviation = Math.sqrt(fraction - seen);
    let [low, high] = [0, REACH];
    for (let halving = 0; halving < 40; halving++) {
      const middle = (low + high) / 2;
      if (beyondProbability(position, deviation, middle * Math.sqrt(fraction)) > due) low = middle;
      else high = middle;
    }
    position = movedOn(position, deviation, high * Math.sqrt(fraction));
    seen = fraction;
    spent += due;
    return high;
  });
}
