// The engine's own logarithm, operation by operation, so that it gives the same bits here.

/** Base-2 logarithm of a positive number. */
export function log2(value: f64): f64 {
  let exponent: f64 = 0;
  let rest = value;
  for (; rest >= Math.SQRT2; rest /= 2) exponent++;
  for (; rest < Math.SQRT2 / 2; rest *= 2) exponent--;
  const z = (rest - 1) / (rest + 1);
  let sum: f64 = 0;
  for (let power: f64 = 23; power > 0; power -= 2) sum = sum * z * z + 1 / power;
  return exponent + (2 * z * sum) / Math.LN2;
}
