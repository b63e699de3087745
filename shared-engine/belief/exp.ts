// An exponential made of + − × ÷ alone, so that every machine gets the same bits.

/** e to the power of −x for 0 ≤ x ≤ 100, within 1e-13 of the true value, relatively. */
export function expOfMinus(x: number): number {
  // e^−x = (e^(−x/256))^256; with |x/256| < 0.4 twelve terms leave less than 1e-15.
  const z = -x / 256;
  let sum = 1;
  for (let term = 12; term > 0; term--) sum = 1 + (z / term) * sum;
  for (let squared = 0; squared < 8; squared++) sum *= sum;
  return sum;
}
