// The same choice analyzed twice: with the same seed the same bytes, with another seed the same verdict.
import { ANALYSIS_SEED } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import {
  analyzeOffered,
  type RecordedDecision,
} from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 12, full: 250 };
const OTHER_SEED = 0x7a_11_0f_15;

/** The small size looks briefly at few choices, so more of them change sides. */
const BARS: Record<Size, number> = { small: 0.75, full: 0.97 };
const BUDGETS: Record<Size, Budget> = { small: SHALLOW_BUDGET, full: DEEP_BUDGET };

export const proof: Proof = {
  summary: 'Analyzed again a choice has the same bytes, and with other deals the same verdict.',
  async run({ seed, size }) {
    const choices = choicesFrom(`${seed} repeat`, CHOICES[size]);
    const budget = BUDGETS[size];
    let bytes = 0;
    let verdicts = 0;
    let opposite = 0;
    for (const decision of choices) {
      const [one, again, other] = [ANALYSIS_SEED, ANALYSIS_SEED, OTHER_SEED].map((seedWord) =>
        analyzedWith(decision, budget, seedWord),
      ) as [Analyzed, Analyzed, Analyzed];
      if (one.bytes === again.bytes) bytes++;
      if (one.verdict === other.verdict) verdicts++;
      else if (one.verdict !== 'undecided' && other.verdict !== 'undecided') opposite++;
    }
    return [
      {
        what: 'choices analyzed again with the same seed, byte-identical',
        value: bytes,
        bar: `${choices.length}`,
        ok: bytes === choices.length,
      },
      {
        what: 'choices with the same verdict under two seeds',
        value: shareText(verdicts, choices.length),
        bar: `at least ${BARS[size] * 100} %`,
        ok: verdicts >= BARS[size] * choices.length,
      },
      {
        what: 'choices with opposite verdicts, neither undecided',
        value: opposite,
        bar: 'at most 1 %',
        ok: opposite <= choices.length / 100,
      },
    ];
  },
};

interface Analyzed {
  readonly bytes: string;
  readonly verdict: string;
}

function analyzedWith(decision: RecordedDecision, budget: Budget, seed: number): Analyzed {
  const analysis = analyzeOffered(analyst, decision, { budget, seed });
  return { bytes: JSON.stringify(analysis), verdict: analysis.verdict };
}
