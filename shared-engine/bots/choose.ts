// (style, what the seat may know) → its choice for the open step; nothing else reaches a bot.

import { type Analyst, createAnalyst } from '../analysis/comparison/analyze.ts';
import type { CompiledCard } from '../card/compiled.ts';
import { NO_SIMD } from '../kernels/simd/module.ts';
import type { Kernel } from '../kernels/tiles-to-go/kernel.ts';
import { lowRiskTiles, type RackScorer, createRackScorer, type Removal, removals } from '../policy/pass-selection.ts';
import { type NearnessStyle, STYLE_DATA, type StyleName } from '../policy/styles.ts';
import { drawn, type Random } from '../rules/deal/random.ts';
import type { AnswerChoice } from '../rules/exchange/command.ts';
import type { PendingDecision } from '../rules/exchange/pending-decision.ts';
import { type MoveStep, PASS_SIZE } from '../rules/exchange/schedule.ts';
import { addTo, type Bag, bagOf, countOf, sortFaces } from '../rules/tiles/bag.ts';
import { copiesOf, type Face } from '../rules/tiles/face.ts';
import { pendingDecision } from '../rules/view/pending-decision.ts';
import type { SeatView } from '../rules/view/view.ts';
import { ROLLOUT_SEEDS, chooseByRollouts } from './rollout-bot.ts';

/**
 * Null when the seat has nothing to answer. Always legal; the same view and draws give the same choice. A style that
 * plays on asks for the analyst of the kernel's card; where none is at hand it works in plain words, much slower.
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
    case 'judging':
      return judged(decision, bagOf(view.rack), data, createRackScorer(kernel, data, random));
    case 'playing-on':
      return chooseByRollouts(decision, view.record, analystOf(kernel.card), data, random.below(ROLLOUT_SEEDS));
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
      return seal(step, drawn(passable, count - blind, random), blind);
    }
  }
}

function judged(decision: PendingDecision, rack: Bag, style: NearnessStyle, look: RackScorer): AnswerChoice {
  const leaving = removals(look, rack, PASS_SIZE);
  switch (decision.kind) {
    case 'vote': {
      const cost = leaving.reduce((sum, removal) => sum + removal.cost, 0);
      return vote(cost < leaving.length * arrivalGain(look, rack, leaving));
    }
    case 'ask':
      return ask(toSpare(leaving, arrivalGain(look, rack, leaving)));
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const spare = blindAllowed ? toSpare(leaving, arrivalGain(look, rack, leaving)) : count;
      const own = Math.min(count, spare);
      const tiles = style.riskCosts
        ? lowRiskTiles(look, rack, own, style.riskCosts)
        : leaving.slice(0, own).map(({ face }) => face);
      return seal(step, tiles, count - own);
    }
  }
}

/** How many tiles cost less to lose than a stranger's tile brings on average. */
function toSpare(leaving: readonly Removal[], gain: number): number {
  const kept = leaving.findIndex(({ cost }) => cost >= gain);
  return kept === -1 ? leaving.length : kept;
}

/** What one tile that this seat does not hold adds on average once the three have gone; jokers never arrive. */
function arrivalGain(look: RackScorer, rack: Bag, leaving: readonly Removal[]): number {
  const rest = leaving.at(-1)?.rest ?? rack;
  const before = look.nearness(rest);
  let gain = 0;
  let copies = 0;
  for (const face of look.order) {
    const unseen = copiesOf(face) - countOf(rack, face);
    gain += unseen * (look.nearness(addTo(rest, [face])) - before);
    copies += unseen;
  }
  return gain / copies;
}

function seal(step: MoveStep, tiles: readonly Face[], blind: number): AnswerChoice {
  return { kind: 'pass', step, tiles: sortFaces(tiles), blind };
}

function vote(go: boolean): AnswerChoice {
  return { kind: 'vote', step: 'vote', go };
}

function ask(count: number): AnswerChoice {
  return { kind: 'ask', step: 'courtesy-ask', count };
}
