// One choice of one seat, analyzed by rollouts of deals that its seat could not rule out.
import type { CompiledCard } from '../../card/index.ts';
import { createTileValues, type SimdModule } from '../../kernels/index.ts';
import { createChoiceModel } from '../../policy/index.ts';
import { type Belief, createBelief } from '../belief/belief.ts';
import type { OfferedChoice, Situation } from '../belief/situation.ts';
import { type Leaf, type Rollouts, TOWARD } from '../rollouts/batch.ts';
import { createRollouts } from '../rollouts/simd.ts';
import { createTableValue } from '../win-probability/table-value.ts';
import { alternativesTo, anyOf, type DecisionSubject } from './alternatives.ts';
import type { Budget } from './budget.ts';
import { type Comparison, compare } from './comparison.ts';
import { createDealSource } from './sampled-deals.ts';
import { screen } from './screen.ts';

/** Fixed for ever, so that the same record gives the same analysis. */
export const ANALYSIS_SEED = 0x51_ad_21_11;

/** What is prepared once a card. */
export interface Analyst {
  readonly leaf: Leaf;
  readonly belief: Belief;
  readonly rollouts: Rollouts;
}

export function createAnalyst(card: CompiledCard, simd: SimdModule): Analyst {
  return {
    leaf: createTableValue(card),
    belief: createBelief(createChoiceModel(createTileValues(simd, card))),
    rollouts: createRollouts(simd, card),
  };
}

/** The part of a choice to analyze, how closely, and from which seed. */
export interface AnalysisTerms {
  readonly subject: DecisionSubject;
  readonly budget: Budget;
  readonly seed?: number;
}

/** Null where nothing of that kind was chosen. */
export function analyze(
  analyst: Analyst,
  offered: OfferedChoice,
  { subject, budget, seed = ANALYSIS_SEED }: AnalysisTerms,
): Comparison | null {
  const { situation } = offered;
  const choice = alternativesTo(offered, subject, analyst.leaf);
  if (choice === null) return null;
  const { seat } = situation;
  const source = createDealSource(analyst, situation, seed);
  const gives = subject === 'tiles';
  return compare(source, {
    seat,
    receiver: gives ? receiverOf(situation) : null,
    screened: screen(source, seat, choice, budget),
    chosen: choice.chosen,
    averagePass: gives ? anyOf(choice.alternatives, seed) : null,
    interimAnalyses: budget.interimAnalyses,
  });
}

function receiverOf({ seat, step }: Situation): number | null {
  const toward = TOWARD[step]!;
  return toward === 0 ? null : (seat + toward) % 4;
}
