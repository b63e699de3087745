// One choice of one seat, analyzed by rollouts of deals that its seat could not rule out.
import type { CompiledCard } from '../../card/index.ts';
import { createTileValues, type SimdModule } from '../../kernels/index.ts';
import { type ChoiceModel, createChoiceModel } from '../../policy/index.ts';
import { type Belief, createBelief } from '../belief/belief.ts';
import type { OfferedChoice, Situation } from '../belief/situation.ts';
import { type Leaf, type Neighbors, type Rollouts, TOWARD } from '../rollouts/batch.ts';
import { createRollouts } from '../rollouts/simd.ts';
import { createTableValue } from '../win-probability/table-value.ts';
import {
  alternativesTo,
  type DecisionSubject,
  type OfferedAlternatives,
  typicalPasses,
} from './alternatives.ts';
import type { ComparisonBudget } from './budget.ts';
import { type Comparison, type ComparisonTask, compare } from './comparison.ts';
import type { DealMemory } from './remembered-deals.ts';
import { createDealSource, type DealSource, type Seeds } from './sampled-deals.ts';
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
  /** How the others play on. */
  readonly neighbors: Neighbors;
  readonly belief: Belief;
  readonly rollouts: Rollouts;
  /** Of what was rolled out last; null where every analysis begins anew. It changes no result. */
  readonly memory: DealMemory | null;
}

export function createAnalyst(card: CompiledCard, simd: SimdModule): Analyst {
  const typical = createChoiceModel(createTileValues(simd, card));
  return {
    card,
    cardHash: hashOfCard(card),
    leaf: createTableValue(card),
    typical,
    neighbors: 'alike',
    belief: createBelief(typical),
    rollouts: createRollouts(simd, card),
    memory: null,
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

/** The deals that an analysis of any choice in this situation rests on. */
export function dealsFor(analyst: Analyst, situation: Situation, seeds: Seeds): DealSource {
  const create = () => createDealSource(analyst, situation, seeds, analyst.neighbors);
  return analyst.memory?.sourceFor(JSON.stringify([seeds, situation]), create) ?? create();
}

/** Null where nothing of that kind was chosen. */
export function analyze(analyst: Analyst, offered: OfferedChoice, terms: AnalysisTerms): Comparison | null {
  const choice = alternativesTo(offered, terms.subject, analyst.leaf);
  if (choice === null) return null;
  const { source, task } = searched(analyst, offered.situation, choice, terms);
  return compare(source, task);
}

/**
 * Has the memory of the analyst hold what an analysis of this choice will ask for, whatever is chosen in the end: all
 * of it where the first of the search is chosen, and the search in any case.
 */
export function prepare(analyst: Analyst, offered: OfferedChoice, terms: AnalysisTerms): void {
  const choice = alternativesTo(offered, terms.subject, analyst.leaf);
  if (choice === null || analyst.memory === null) return;
  const likely = { ...choice, chosen: choice.alternatives[0]! };
  const { source, task } = searched(analyst, offered.situation, likely, terms);
  compare(source, { ...task, chosen: task.screened.finalists[0]!.alternative });
}

interface Searched {
  readonly source: DealSource;
  readonly task: ComparisonTask;
}

function searched(
  analyst: Analyst,
  situation: Situation,
  choice: OfferedAlternatives,
  { subject, budget, ...terms }: AnalysisTerms,
): Searched {
  const { seat } = situation;
  const seeds = seedsFor(analyst, situation, terms);
  const source = dealsFor(analyst, situation, seeds);
  const gives = subject === 'tiles';
  const task = {
    seat,
    receiver: gives ? receiverOf(situation) : null,
    screened: screen(source, seat, choice, gives ? budget : forNumbers(budget)),
    chosen: choice.chosen,
    typicalPass: gives
      ? typicalPasses(analyst.typical, situation, choice.chosen.tiles.length, seeds.noise)
      : null,
    fresh: budget.fresh,
  };
  return { source, task };
}

/** Four numbers need no thinning out. */
function forNumbers({ rounds, ...budget }: ComparisonBudget): ComparisonBudget {
  return { ...budget, firstBatches: 0, rounds: rounds.filter(({ end }) => end === undefined) };
}

function receiverOf({ seat, step }: Situation): number | null {
  const toward = TOWARD[step]!;
  return toward === 0 ? null : (seat + toward) % 4;
}
