// A logarithm and an exponential made of + − × ÷ alone, so that every machine gets the same bits.

/** Base-2 logarithm of a positive number between 2⁻¹⁰²² and 2¹⁰²³, within 1e-13 of the true value. */
export function log2(value: number): number {
  let exponent = 0;
  let rest = value;
  // Doubling and halving are exact.
  for (; rest >= Math.SQRT2; rest /= 2) exponent++;
  for (; rest < Math.SQRT2 / 2; rest *= 2) exponent--;
  // ln m = 2 artanh z with z = (m − 1) ÷ (m + 1), |z| < 0.172: twelve terms leave less than 1e-19.
  const z = (rest - 1) / (rest + 1);
  let sum = 0;
  for (let power = 23; power > 0; power -= 2) sum = sum * z * z + 1 / power;
  return exponent + (2 * z * sum) / Math.LN2;
}

/** e to the power of −x from its series: good for any x ≤ 100, and slow. */
function expBySeries(x: number): number {
  // e^−x = (e^(−x/256))^256; with |x/256| < 0.4 twelve terms leave less than 1e-15.
  const z = -x / 256;
  let sum = 1;
  for (let term = 12; term > 0; term--) sum = 1 + (z / term) * sum;
  for (let squared = 0; squared < 8; squared++) sum *= sum;
  return sum;
}

const MOST = 100;
const STEPS = 16;
/** e to the power of −n/16. */
export const EXP_MINUS_STEPS: Float64Array = Float64Array.from({ length: MOST * STEPS + 1 }, (_, n) =>
  expBySeries(n / STEPS),
);

/** e to the power of −x for 0 ≤ x ≤ 100, within 1e-12 of the true value, relatively. */
export function expMinus(x: number): number {
  const step = Math.floor(x * STEPS);
  const r = step / STEPS - x;
  // |r| < 1/16: seven terms leave less than 1e-14.
  const series =
    1 + r * (1 + r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r * (1 / 720 + r * (1 / 5040)))))));
  return EXP_MINUS_STEPS[step]! * series;
}
