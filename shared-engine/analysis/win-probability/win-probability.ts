// Win probability: the chance in 100 that a seat is first to complete a hand, from its own rack alone.
import type { CompiledCard } from '../../card/index.ts';
import { preparePlayCard } from '../play/play-card.ts';
import { createFeatures, FEATURES } from './features.ts';
import { WIN_MODEL } from './model.ts';
import type { WinModel } from './model-format.ts';

export interface WinProbability {
  /**
   * 0–100, for a rack as it stands at the close (14 tiles for the dealer, 13 for the others) so many seats to the
   * right of the dealer: counts by face, a `Bag` or 36 places of a longer array from `at` on.
   */
  of(racks: ArrayLike<number>, at: number, place: number): number;
}

/** Prepares a card once; asking about a rack then costs a few passes over the card's hands. */
export function createWinProbability(card: CompiledCard, model: WinModel = WIN_MODEL): WinProbability {
  const features = createFeatures(preparePlayCard(card), model.steps);
  const weights = FEATURES.map((name) => model.weights[name]);
  return {
    of(racks, at, place) {
      const values = features.of(racks, at);
      let score = model.start + model.dealerOffsets[place]!;
      for (let i = 0; i < weights.length; i++) score += weights[i]! * values[i]!;
      return winProbabilityAt(model, score);
    },
  };
}

/** Linear between the two knots around the score. */
export function winProbabilityAt(
  { scores, winProbabilities }: Pick<WinModel, 'scores' | 'winProbabilities'>,
  score: number,
): number {
  const last = scores.length - 1;
  if (score <= scores[0]!) return winProbabilities[0]!;
  if (score >= scores[last]!) return winProbabilities[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (scores[middle]! <= score) low = middle;
    else high = middle;
  }
  const share = (score - scores[low]!) / (scores[high]! - scores[low]!);
  return winProbabilities[low]! + share * (winProbabilities[high]! - winProbabilities[low]!);
}
