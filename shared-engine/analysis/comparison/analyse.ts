// One choice of one seat, judged by playouts in worlds that its seat could not rule out.

import type { CompiledCard } from '../../card/compiled.ts';
import { createUses } from '../../kernels/near-hands/tile-value.ts';
import type { Vectors } from '../../kernels/simd/module.ts';
import { createChoiceModel } from '../../policy/choice-model.ts';
import { MOVES, STEPS } from '../../rules/exchange/schedule.ts';
import { FACES, faceIndex } from '../../rules/tiles/face.ts';
import { type Belief, createBelief } from '../belief/belief.ts';
import type { OfferedChoice, Situation } from '../belief/situation.ts';
import type { Playouts } from '../rollouts/batch.ts';
import type { Leaf } from '../rollouts/leaf.ts';
import { createBatchPlayouts } from '../rollouts/simd.ts';
import { outlookLeaf } from '../rollouts/win-probability-leaf.ts';
import { createOutlook } from '../win-probability/win-probability.ts';
import { type Alternative, anyOf, asks, blindNumbers, passesOf, samePass, votes } from './alternatives.ts';
import type { Budget } from './budget.ts';
import { type Race, race } from './comparison.ts';
import { createWorldSource } from './sampled-deals.ts';
import { screen } from './screen.ts';

/** Fixed for ever, so that the same record gives the same analysis. */
export const ANALYSIS_SEED = 0x51_ad_21_11;

/** What is prepared once a card. */
export interface Analyst {
  readonly leaf: Leaf;
  readonly belief: Belief;
  readonly playouts: Playouts;
}

export function createAnalyst(card: CompiledCard, vectors: Vectors): Analyst {
  return {
    leaf: outlookLeaf(createOutlook(card)),
    belief: createBelief(createChoiceModel(createUses(vectors, card))),
    playouts: createBatchPlayouts(vectors, card),
  };
}

/** What is asked of one choice: the tiles given, or a number. */
export type Asked = 'tiles' | 'number';

/** A race about the tiles of a move, or about the number chosen; null where nothing of that kind was chosen. */
export function analyse(
  { leaf, belief, playouts }: Analyst,
  offered: OfferedChoice,
  asked: Asked,
  budget: Budget,
  seed: number = ANALYSIS_SEED,
): Race | null {
  const { situation } = offered;
  const choice = alternativesTo(offered, asked, leaf);
  if (choice === null) return null;
  const { alternatives, chosen } = choice;
  const source = createWorldSource(belief, playouts, situation, seed);
  const screened = screen(source, situation.seat, alternatives, chosen, budget);
  const gives = asked === 'tiles';
  const baseline = gives ? anyOf(alternatives, seed) : null;
  return race(source, situation, gives ? receiverOf(situation) : null, screened, chosen, baseline, budget);
}

/** What could have been chosen, best kept rack first, and what was. */
export interface Chosen {
  readonly alternatives: readonly Alternative[];
  readonly chosen: Alternative;
}

export function alternativesTo(offered: OfferedChoice, asked: Asked, leaf: Leaf): Chosen | null {
  return asked === 'tiles' ? tilesChosen(offered, leaf) : numberChosen(offered, leaf);
}

function tilesChosen({ situation, chosen }: OfferedChoice, leaf: Leaf): Chosen | null {
  if (chosen.kind !== 'move' || chosen.gave.length === 0) return null;
  const gave = chosen.gave.map(faceIndex);
  const alternatives = passesOf(situation, gave.length, leaf);
  const played = alternatives.find(({ tiles }) => samePass(tiles, gave));
  return played ? { alternatives, chosen: played } : null;
}

function numberChosen({ situation, chosen }: OfferedChoice, leaf: Leaf): Chosen | null {
  switch (chosen.kind) {
    case 'vote':
      return among(votes(), chosen.go[situation.seat] ? 1 : 0);
    case 'ask':
      return among(asks(), chosen.asked[situation.seat]);
    case 'move':
      if (!MOVES[chosen.step].blind) return null;
      return among(blindNumbers(situation, leaf), chosen.blind[situation.seat]);
  }
}

function among(alternatives: readonly Alternative[], number: number): Chosen | null {
  const chosen = alternatives.find((each) => each.number === number);
  return chosen ? { alternatives, chosen } : null;
}

function receiverOf({ seat, step }: Situation): number | null {
  const name = STEPS[step]!;
  if (!(name in MOVES)) return null;
  const { toward } = MOVES[name as keyof typeof MOVES];
  return (seat + 1 + ['right', 'across', 'left'].indexOf(toward)) % 4;
}

/** The faces of an alternative's tiles. */
export function facesIn({ tiles }: Alternative) {
  return tiles.map((face) => FACES[face]!);
}
