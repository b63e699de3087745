// How numbers are rounded: thousandths in the review, tenths in its sentences.

/** The nearest thousandth. */
export function thousandth(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** A measured number as a sentence shows it: one decimal. */
export function inTenths(value: number): string {
  return (Math.round(value * 10) / 10).toFixed(1);
}
