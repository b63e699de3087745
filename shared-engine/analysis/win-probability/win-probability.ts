// Outlook: the chance in 100 that a seat is first to complete a line, from its own rack alone.
import type { CompiledCard } from '../../card/compiled.ts';
import { preparePlayCard } from '../play/play-card.ts';
import { createMeasures, MEASURES } from './features.ts';
import { OUTLOOK_MODEL } from './model.ts';
import type { OutlookModel } from './model-format.ts';

/** Seats to the right of the dealer: 0 is the dealer. */
export type Place = 0 | 1 | 2 | 3;

export interface Outlook {
  /**
   * 0–100, for a rack as it stands at the close (14 tiles for the dealer, 13 for the others): counts by face, a
   * `Bag` or 36 places of a longer array from `at` on.
   */
  of(racks: ArrayLike<number>, place: Place, at?: number): number;
}

/** Prepares a card once; asking about a rack then costs a few passes over the card's targets. */
export function createOutlook(card: CompiledCard, model: OutlookModel = OUTLOOK_MODEL): Outlook {
  const measures = createMeasures(preparePlayCard(card), model.steps);
  const weights = MEASURES.map((name) => model.weights[name]);
  return {
    of(racks, place, at = 0) {
      const values = measures.of(racks, at);
      let score = model.start + model.places[place];
      for (let i = 0; i < weights.length; i++) score += weights[i]! * values[i]!;
      return chanceAt(model, score);
    },
  };
}

/** The line through the two knots around the score. */
export function chanceAt(
  { scores, chances }: Pick<OutlookModel, 'scores' | 'chances'>,
  score: number,
): number {
  const last = scores.length - 1;
  if (score <= scores[0]!) return chances[0]!;
  if (score >= scores[last]!) return chances[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (scores[middle]! <= score) low = middle;
    else high = middle;
  }
  const share = (score - scores[low]!) / (scores[high]! - scores[low]!);
  return chances[low]! + share * (chances[high]! - chances[low]!);
}
