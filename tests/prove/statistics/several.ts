// p-values of several questions asked at once.

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
