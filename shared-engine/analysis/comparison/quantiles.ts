// Quantiles of the normal and of Student’s distribution, made of + − × ÷ and roots alone.
import { log2 } from '../../kernels/index.ts';

/** Upper point of the standard normal distribution for an upper tail p, 1e-9 < p < 0.5 (Acklam's approximation). */
export function normalQuantile(p: number): number {
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.LN2 * log2(p));
    return -(
      (((((-7.784894002430293e-3 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) *
        q +
        4.374664141464968) *
        q +
        2.938163982698783) /
      ((((7.784695709041462e-3 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) *
        q +
        1)
    );
  }
  const q = 0.5 - p;
  const r = q * q;
  return (
    ((((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r -
      30.66479806614716) *
      r +
      2.506628277459239) *
      q) /
    (((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r -
      13.28068155288572) *
      r +
      1)
  );
}

/**
 * Upper point of Student's distribution with `df` ≥ 7 degrees of freedom for an upper tail p: the expansion around
 * the normal point (Abramowitz and Stegun 26.7.5), within 1 % for p ≥ 1e-4 and far closer for df ≥ 15.
 */
export function studentQuantile(p: number, df: number): number {
  const z = normalQuantile(p);
  const s = z * z;
  return (
    z *
    (1 +
      (s + 1) / (4 * df) +
      ((5 * s + 16) * s + 3) / (96 * df * df) +
      (((3 * s + 19) * s + 17) * s - 15) / (384 * df * df * df) +
      ((((79 * s + 776) * s + 1482) * s - 1920) * s - 945) / (92_160 * df * df * df * df))
  );
}
