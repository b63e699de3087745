// Reviews shared by everybody who held and did the same: made once for each record, byte for byte.
import type { Review, SeatRecord } from '../../shared-engine/index.ts';
import type { PlayingCard, Reviewer } from '../ports.ts';

/** Reviews remembered for each card: a class of sixty with a drill of some deals, at every step of it. */
const KEPT = 2000;

/** A review says nothing that its record does not, so whoever has an equal record may have it. */
export function sharedReviewer(reviewer: Reviewer): Reviewer {
  const byCard = new WeakMap<PlayingCard, Map<string, Promise<Review>>>();

  function knownFor(card: PlayingCard): Map<string, Promise<Review>> {
    const known = byCard.get(card) ?? new Map<string, Promise<Review>>();
    byCard.set(card, known);
    return known;
  }

  return {
    review(record: SeatRecord, card: PlayingCard, earlier) {
      const known = knownFor(card);
      const key = JSON.stringify(record);
      const made = known.get(key);
      if (made) return made;
      const review = reviewer.review(record, card, earlier);
      known.set(key, review);
      // What failed may succeed for the next who asks.
      review.catch(() => known.delete(key));
      const [oldest] = known.keys();
      if (known.size > KEPT && oldest !== undefined) known.delete(oldest);
      return review;
    },
  };
}
