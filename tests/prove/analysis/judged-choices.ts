// Choices analyzed, and what a long run of other deals finds of the same alternatives: several proofs ask for the same.
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import type { Comparison } from '../../../shared-engine/analysis/comparison/comparison.ts';
import type { Estimate } from '../../../shared-engine/analysis/comparison/estimate.ts';
import type { RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import type { Size } from '../proof.ts';
import { analyst, choicesFrom } from './choices.ts';
import { longRunOf } from './long-run.ts';

export interface JudgedChoice extends RecordedDecision {
  readonly comparison: Comparison;
  /** By how much the long run finds the best alternative better than the choice, and the one spoken of. */
  readonly loss: Estimate;
  readonly named: Estimate | null;
}

const BUDGETS: Readonly<Record<Size, Budget>> = { small: SHALLOW_BUDGET, full: DEEP_BUDGET };
const CHOICES: Readonly<Record<Size, number>> = { small: 14, full: 1_200 };
const BATCHES: Readonly<Record<Size, number>> = { small: 20, full: 400 };

const NOTHING: Estimate = { value: 0, halfWidth: 0 };
const judged = new Map<string, readonly JudgedChoice[]>();

export function judgedChoices(seed: string, size: Size): readonly JudgedChoice[] {
  const key = `${seed} ${size}`;
  const known = judged.get(key);
  if (known !== undefined) return known;
  const made = choicesFrom(`${seed} judged`, CHOICES[size]).map((decision): JudgedChoice => {
    const { offered, subject } = decision;
    const comparison = analyze(analyst, offered, { subject, budget: BUDGETS[size] })!;
    const { finalists, chosen, bestAlternative } = comparison;
    const longRun = longRunOf(
      offered,
      finalists.map(({ alternative }) => alternative),
      BATCHES[size],
    );
    const played = finalists.indexOf(chosen);
    const differences = finalists.map((_, other) =>
      other === played ? NOTHING : longRun.difference(other, played),
    );
    return {
      ...decision,
      comparison,
      loss: differences.reduce((worst, other) => (other.value > worst.value ? other : worst)),
      named: bestAlternative && differences[finalists.indexOf(bestAlternative)]!,
    };
  });
  judged.set(key, made);
  return made;
}
