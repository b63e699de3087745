// (style, what the seat may know) → its choice for the open step; a bot is given nothing else.
import { type Analyst, createAnalyst } from '../analysis/index.ts';
import type { CompiledCard } from '../card/index.ts';
import { type Kernel, NO_SIMD } from '../kernels/index.ts';
import {
  createRackScorer,
  createSteadySelection,
  lowRiskTiles,
  type NearnessStyle,
  type RackScorer,
  type Removal,
  removals,
  STYLE_DATA,
  type SteadyPass,
  type StyleName,
} from '../policy/index.ts';
import {
  type AnswerChoice,
  addTo,
  type Bag,
  bagOf,
  copiesOf,
  countOf,
  drawn,
  FACES,
  type Face,
  type MoveStep,
  PASS_SIZE,
  type PendingDecision,
  pendingDecision,
  type Random,
  type SeatView,
  sortFaces,
} from '../rules/index.ts';
import { chooseByRollouts, ROLLOUT_SEEDS } from './rollout-bot.ts';

/**
 * Null when the seat has nothing to answer. Always legal; the same view and random numbers give the same choice. A
 * style with rollouts asks for the analyst of the kernel's card; the default works without SIMD, much slower.
 */
export function chooseFor(
  style: StyleName,
  view: SeatView,
  kernel: Kernel,
  random: Random,
  analystOf: (card: CompiledCard) => Analyst = (card) => createAnalyst(card, NO_SIMD),
): AnswerChoice | null {
  const decision = pendingDecision(view);
  if (decision === null) return null;
  const data = STYLE_DATA[style];
  switch (data.kind) {
    case 'any-legal':
      return anyLegal(decision, view.rack, random);
    case 'nearness':
      return byNearness(decision, bagOf(view.rack), data, createRackScorer(kernel, data, random));
    case 'steady':
      return steadily(decision, steadySelectionOf(kernel.card)(bagOf(view.rack)));
    case 'rollout': {
      const seed = random.below(ROLLOUT_SEEDS);
      return chooseByRollouts(decision, view.record, analystOf(kernel.card), { ...data, seed });
    }
  }
}

/** Prepared for a card when a steady bot plays on it first. */
const steadySelections = new WeakMap<CompiledCard, ReturnType<typeof createSteadySelection>>();

function steadySelectionOf(card: CompiledCard): ReturnType<typeof createSteadySelection> {
  const selection = steadySelections.get(card) ?? createSteadySelection(card);
  steadySelections.set(card, selection);
  return selection;
}

function steadily(decision: PendingDecision, { tiles, spare }: SteadyPass): AnswerChoice {
  switch (decision.kind) {
    case 'vote':
      return vote(spare === PASS_SIZE);
    case 'ask':
      return ask(spare);
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const own = blindAllowed ? Math.min(count, spare) : count;
      const faces = tiles.slice(0, own).map((face) => FACES[face]!);
      return pass(step, faces, count - own);
    }
  }
}

function anyLegal(decision: PendingDecision, rack: readonly Face[], random: Random): AnswerChoice {
  switch (decision.kind) {
    case 'vote':
      return vote(random.below(2) === 1);
    case 'ask':
      return ask(random.below(PASS_SIZE + 1));
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const blind = blindAllowed ? random.below(count + 1) : 0;
      // A rack of 13 holds at most 8 jokers, so there are always enough tiles to pass.
      const passable = rack.filter((face) => face !== 'joker');
      return pass(step, drawn(passable, count - blind, random), blind);
    }
  }
}

function byNearness(
  decision: PendingDecision,
  rack: Bag,
  style: NearnessStyle,
  scorer: RackScorer,
): AnswerChoice {
  const removed = removals(scorer, rack, PASS_SIZE);
  switch (decision.kind) {
    case 'vote': {
      const cost = removed.reduce((sum, removal) => sum + removal.cost, 0);
      return vote(cost < removed.length * arrivalGain(scorer, rack, removed));
    }
    case 'ask':
      return ask(spareCount(removed, arrivalGain(scorer, rack, removed)));
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const spare = blindAllowed ? spareCount(removed, arrivalGain(scorer, rack, removed)) : count;
      const own = Math.min(count, spare);
      const tiles = style.riskCosts
        ? lowRiskTiles(scorer, rack, own, style.riskCosts)
        : removed.slice(0, own).map(({ face }) => face);
      return pass(step, tiles, count - own);
    }
  }
}

/** How many tiles cost less to lose than an arriving tile brings on average. */
function spareCount(removed: readonly Removal[], gain: number): number {
  const kept = removed.findIndex(({ cost }) => cost >= gain);
  return kept === -1 ? removed.length : kept;
}

/** What one tile that this seat does not hold adds on average once the three have gone; jokers never arrive. */
function arrivalGain(scorer: RackScorer, rack: Bag, removed: readonly Removal[]): number {
  const rest = removed.at(-1)?.rest ?? rack;
  const before = scorer.nearness(rest);
  let gain = 0;
  let copies = 0;
  for (const face of scorer.order) {
    const hidden = copiesOf(face) - countOf(rack, face);
    gain += hidden * (scorer.nearness(addTo(rest, [face])) - before);
    copies += hidden;
  }
  return gain / copies;
}

function pass(step: MoveStep, tiles: readonly Face[], blind: number): AnswerChoice {
  return { kind: 'pass', step, tiles: sortFaces(tiles), blind };
}

function vote(go: boolean): AnswerChoice {
  return { kind: 'vote', step: 'vote', go };
}

function ask(count: number): AnswerChoice {
  return { kind: 'ask', step: 'courtesy-ask', count };
}
