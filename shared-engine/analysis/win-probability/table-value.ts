// What a table is worth: each seat's chance to win and the chance of a wall game, from all four racks together.
import type { CompiledCard } from '../../card/index.ts';
import { expMinus } from '../../kernels/index.ts';
import { preparePlayCard } from '../play/play-card.ts';
import { createFeatures, FEATURES } from './features.ts';
import { WIN_MODEL } from './model.ts';
import type { WinModel } from './model-format.ts';

/**
 * The chances of a table are the shares of five weights, one a rack and one for the wall (a conditional logit). What a
 * rack weighs depends on that rack alone, so it is computed once however often the others change.
 */
export interface TableValue {
  /**
   * The weight of a rack as it stands at the close (14 tiles for the dealer, 13 for the others) so many seats to the
   * right of the dealer: counts by face, a `Bag` or 36 places of a longer array from `at` on.
   */
  weight(racks: ArrayLike<number>, at: number, place: number): number;
  readonly wall: number;
}

/** Above every score, so that weights are powers below 1; they cancel out of the shares. */
export const LOG_CEILING = 20;

/** The weight that goes with a score: e to the power of it, but for the ceiling. */
export function weightOf(score: number): number {
  return expMinus(Math.max(0, Math.min(100, LOG_CEILING - score)));
}

/** What the wall weighs on a card whose better random racks reach so far. */
export function wallWeight({ wall }: Pick<WinModel, 'wall'>, center: number): number {
  return weightOf(wall.start + wall.center * center);
}

/** Writes the chances in 100 of four seats to win to `out`; what is missing to 100 is a wall game. */
export function chancesOf(weights: ArrayLike<number>, wall: number, out: Float64Array): void {
  const total = weights[0]! + weights[1]! + (weights[2]! + weights[3]!) + wall;
  for (let seat = 0; seat < 4; seat++) out[seat] = (100 * weights[seat]!) / total;
}

/** Prepares a card once; asking about a rack then costs a few passes over the card's hands. */
export function createTableValue(card: CompiledCard, model: WinModel = WIN_MODEL): TableValue {
  const features = createFeatures(preparePlayCard(card), model.steps);
  const weights = FEATURES.map((name) => model.weights[name]);
  return {
    wall: wallWeight(model, features.center),
    weight(racks, at, place) {
      const values = features.of(racks, at);
      let score = model.dealerOffsets[place]!;
      for (let i = 0; i < weights.length; i++) score += weights[i]! * values[i]!;
      return weightOf(score);
    },
  };
}
