// How strongly many rounds say that somebody errs more often than is usual, however often one has looked before.

/** By how much more often: steps from the usual chance towards certainty, each tried. */
const STEPS_UP = [0.05, 0.1, 0.2, 0.4, 0.8] as const;

/** Beyond it nothing is added, below its inverse nothing is left. */
const ENOUGH = 1e12;

/**
 * `cases` of so many rounds against a chance of at most `usual` in each: the mean of the likelihood ratios of five larger
 * chances. Where the chance is not larger, this number is 1 on average and stays so from round to round (a
 * supermartingale), so that it ever reaches 1 / α, at whichever of all looks, with a chance of at most α (Ville 1939).
 */
export function evidenceAgainst(usual: number, { cases, rounds }: Counted): number {
  return STEPS_UP.reduce((sum, up) => sum + ratio(usual, usual + (1 - usual) * up, { cases, rounds }), 0) / 5;
}

export interface Counted {
  readonly cases: number;
  readonly rounds: number;
}

/** Without logarithms, which are not the same on every machine: factors above and below 1 are taken in turn. */
function ratio(usual: number, more: number, { cases, rounds }: Counted): number {
  const [up, down] = [more / usual, (1 - more) / (1 - usual)];
  let [value, ups, downs] = [1, cases, rounds - cases];
  while (ups + downs > 0) {
    const rises = ups > 0 && (value < ENOUGH || downs === 0);
    if (rises) ups--;
    else downs--;
    value *= rises ? up : down;
    if (value > ENOUGH && downs === 0) return ENOUGH;
    if (value < 1 / ENOUGH && ups === 0) return 0;
  }
  return value;
}
