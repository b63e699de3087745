// One choice of one seat, analyzed by rollouts of deals that its seat could not rule out.
import type { CompiledCard } from '../../card/index.ts';
import { createTileValues, type SimdModule } from '../../kernels/index.ts';
import { type ChoiceModel, createChoiceModel } from '../../policy/index.ts';
import { type Belief, createBelief } from '../belief/belief.ts';
import type { OfferedChoice, Situation } from '../belief/situation.ts';
import { type Leaf, type Rollouts, TOWARD } from '../rollouts/batch.ts';
import { createRollouts } from '../rollouts/simd.ts';
import { createTableValue } from '../win-probability/table-value.ts';
import { alternativesTo, type DecisionSubject, typicalPasses } from './alternatives.ts';
import type { ComparisonBudget } from './budget.ts';
import { type Comparison, compare } from './comparison.ts';
import { createDealSource, type Seeds } from './sampled-deals.ts';
import { screen } from './screen.ts';
import { hashOfCard, situationSeeds } from './situation-seed.ts';

/** What is prepared once a card. */
export interface Analyst {
  readonly card: CompiledCard;
  /** Stands for the card in seeds. */
  readonly cardHash: string;
  readonly leaf: Leaf;
  /** How club players pass. */
  readonly typical: ChoiceModel;
  readonly belief: Belief;
  readonly rollouts: Rollouts;
}

export function createAnalyst(card: CompiledCard, simd: SimdModule): Analyst {
  const typical = createChoiceModel(createTileValues(simd, card));
  return {
    card,
    cardHash: hashOfCard(card),
    leaf: createTableValue(card),
    typical,
    belief: createBelief(typical),
    rollouts: createRollouts(simd, card),
  };
}

/** The part of a choice to analyze, how closely, and from which seed: by default the situation's own. */
export interface AnalysisTerms {
  readonly subject: DecisionSubject;
  readonly budget: ComparisonBudget;
  readonly seed?: number;
}

/** The situation's own seeds, or the one that a check asks for. */
export function seedsFor(
  { cardHash }: Pick<Analyst, 'cardHash'>,
  situation: Situation,
  { seed }: Pick<AnalysisTerms, 'seed'>,
): Seeds {
  return seed === undefined ? situationSeeds(cardHash, situation) : { deals: seed, noise: seed };
}

/** Null where nothing of that kind was chosen. */
export function analyze(
  analyst: Analyst,
  offered: OfferedChoice,
  { subject, budget, ...terms }: AnalysisTerms,
): Comparison | null {
  const { situation } = offered;
  const choice = alternativesTo(offered, subject, analyst.leaf);
  if (choice === null) return null;
  const { seat } = situation;
  const seeds = seedsFor(analyst, situation, terms);
  const source = createDealSource(analyst, situation, seeds);
  const gives = subject === 'tiles';
  return compare(source, {
    seat,
    receiver: gives ? receiverOf(situation) : null,
    screened: screen(source, seat, choice, gives ? budget : forNumbers(budget)),
    chosen: choice.chosen,
    typicalPass: gives
      ? typicalPasses(analyst.typical, situation, choice.chosen.tiles.length, seeds.noise)
      : null,
    fresh: budget.fresh,
  });
}

/** Four numbers need no thinning out. */
function forNumbers({ rounds, ...budget }: ComparisonBudget): ComparisonBudget {
  return { ...budget, firstBatches: 0, rounds: rounds.filter(({ end }) => end === undefined) };
}

function receiverOf({ seat, step }: Situation): number | null {
  const toward = TOWARD[step]!;
  return toward === 0 ? null : (seat + toward) % 4;
}
