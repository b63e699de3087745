// What choosing the best of several noisy values adds to it.

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
