// How often something may be repeated, at once and with time, so that no log grows by it without bound.

/** So many times at once, and once more for each interval that passes, in milliseconds. */
export interface Allowance {
  readonly atOnce: number;
  readonly everyMs: number;
}

/** How much of an allowance was used at the time `at`, in milliseconds since 1970; it decreases from then on. */
export interface Used {
  readonly count: number;
  readonly at: number;
}

export const UNUSED: Used = { count: 0, at: 0 };

export function isAllowed(used: Used, allowance: Allowance, at: number): boolean {
  return countAt(used, allowance, at) + 1 <= allowance.atOnce;
}

export function usedOnceMore(used: Used, allowance: Allowance, at: number): Used {
  return { count: countAt(used, allowance, at) + 1, at };
}

/** The same, with `free` more times at once. */
export function usedLess(used: Used, { atOnce }: Allowance, free: number): Used {
  return { ...used, count: Math.min(used.count, atOnce - free) };
}

/** A clock that was set back gives nothing and takes nothing. */
function countAt({ count, at: before }: Used, { everyMs }: Allowance, at: number): number {
  return Math.max(0, count - Math.max(0, at - before) / everyMs);
}
