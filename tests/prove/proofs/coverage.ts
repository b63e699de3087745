// Do 95 % intervals hold what a long run finds in 95 of 100 choices, and is no loss overstated?
import { judgedChoices } from '../analysis/judged-choices.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

/** A few dozen choices say little: at 95 % one in seven hardly ever misses. */
const BARS: Readonly<Record<Size, readonly [number, number]>> = { small: [0.8, 1], full: [0.93, 0.97] };
const OVERSTATED: Readonly<Record<Size, number>> = { small: 1.5, full: 0.1 };

export const proof: Proof = {
  summary:
    '95 % intervals of the loss hold what a long run of other deals finds, and losses are not overstated.',
  async run({ seed, size }) {
    const told = judgedChoices(seed, size).flatMap(({ comparison, named }) => {
      const { bestAlternative, verdict } = comparison;
      if (bestAlternative === null || named === null) return [];
      const { value, halfWidth } = bestAlternative.difference;
      // The long run errs as well: the interval of the difference of two independent means.
      const width = Math.sqrt(halfWidth ** 2 + named.halfWidth ** 2);
      const over = value - named.value;
      return [{ verdict, over, holds: Math.abs(over) <= width + 1e-9 }];
    });
    const costly = told.filter(({ verdict }) => verdict === 'costly');
    const over = costly.reduce((sum, each) => sum + each.over, 0) / Math.max(1, costly.length);
    return [
      heldRow('choices whose interval holds a long run of other deals', told, BARS[size]),
      heldRow('the same where a choice is called costly', costly, size === 'small' ? [0.6, 1] : BARS[size]),
      {
        what: `mean of told loss − long-run loss over ${costly.length} choices called costly`,
        value: Math.round(over * 1000) / 1000,
        bar: `at most ${OVERSTATED[size]} either way`,
        ok: Math.abs(over) <= OVERSTATED[size],
      },
    ];
  },
};

function heldRow(
  what: string,
  told: readonly { readonly holds: boolean }[],
  [low, high]: readonly [number, number],
): ProofRow {
  const held = told.filter(({ holds }) => holds).length;
  return {
    what,
    value: shareText(held, told.length),
    bar: `${low * 100}–${high * 100} %`,
    ok: held >= low * told.length && held <= high * told.length,
  };
}
