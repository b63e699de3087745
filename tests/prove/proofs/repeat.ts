// The same choice analyzed twice: the same bytes, and with other deals hardly ever the opposite.
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import type { DeepAnalysis } from '../../../shared-engine/analysis/review/analysis.ts';
import {
  analyzeOffered,
  type RecordedDecision,
} from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 10, full: 3_000 };
const OTHER_SEED = 0x7a_11_0f_15;

/** Opposite verdicts, and told differences that lie within what both allow. */
const BARS: Record<Size, { readonly opposite: number; readonly within: readonly [number, number] }> = {
  small: { opposite: 0, within: [0.6, 1] },
  full: { opposite: 0.001, within: [0.93, 0.97] },
};
const BUDGETS: Record<Size, Budget> = { small: SHALLOW_BUDGET, full: DEEP_BUDGET };

export const proof: Proof = {
  summary: 'Analyzed again a choice has the same bytes, and with other deals no opposite verdict.',
  async run({ seed, size }) {
    const choices = choicesFrom(`${seed} repeat`, CHOICES[size]);
    const { opposite, within } = BARS[size];
    let bytes = 0;
    let opposed = 0;
    let comparable = 0;
    let agreeing = 0;
    for (const decision of choices) {
      const one = analyzedWith(decision, BUDGETS[size]);
      const again = analyzedWith(decision, BUDGETS[size]);
      const other = analyzedWith(decision, BUDGETS[size], OTHER_SEED);
      if (JSON.stringify(one) === JSON.stringify(again)) bytes++;
      if (isOpposite(one, other) || isOpposite(other, one)) opposed++;
      const miss = missBetween(one, other);
      if (miss === null) continue;
      comparable++;
      if (miss <= 1) agreeing++;
    }
    return [
      {
        what: 'choices analyzed again, byte-identical',
        value: bytes,
        bar: `${choices.length}`,
        ok: bytes === choices.length,
      },
      {
        what: 'pairs of seeds with opposite verdicts: costly, and best or just as good',
        value: shareText(opposed, choices.length),
        bar: `at most ${opposite * 100} %`,
        ok: opposed <= opposite * choices.length,
      },
      {
        what: 'pairs that speak of the same alternative and whose differences lie within their combined half-width',
        value: shareText(agreeing, comparable),
        bar: `${within[0] * 100}–${within[1] * 100} %`,
        ok: agreeing >= within[0] * comparable && agreeing <= within[1] * comparable,
      },
    ];
  },
};

function analyzedWith(decision: RecordedDecision, budget: Budget, seed?: number): DeepAnalysis {
  return analyzeOffered(analyst, decision, seed === undefined ? { budget } : { budget, seed });
}

function isOpposite(one: DeepAnalysis, other: DeepAnalysis): boolean {
  return one.verdict === 'costly' && (other.verdict === 'best' || other.verdict === 'just-as-good');
}

/** The distance of two told differences in combined half-widths; null where they are not of the same alternative. */
function missBetween(one: DeepAnalysis, other: DeepAnalysis): number | null {
  const [a, b] = [one, other].map(({ bestAlternative, finalists }) =>
    bestAlternative === null ? undefined : finalists[bestAlternative],
  );
  if (!a || !b || a.tiles.join() !== b.tiles.join() || a.number !== b.number) return null;
  const width = Math.sqrt(a.difference.halfWidth ** 2 + b.difference.halfWidth ** 2);
  return width === 0 ? null : Math.abs(a.difference.value - b.difference.value) / width;
}
