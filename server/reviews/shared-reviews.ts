// First reviews shared by everybody who held and did the same: one for each record, byte for byte.
import { LRUCache } from 'lru-cache';
import type { Review } from '../../shared-engine/index.ts';
import type { Reviewer } from '../work-ports.ts';

/** Reviews remembered: those of a class of sixty with a drill of some deals, at every step of it. */
const MAX_REMEMBERED = 2_000;

/** A review says nothing that its record does not, so whoever has an equal record may have it. */
export function sharedReviewer(reviewer: Reviewer): Reviewer {
  const remembered = new LRUCache<string, Promise<Review>>({ max: MAX_REMEMBERED });
  return {
    review(request) {
      const key = JSON.stringify([request.card.key, request.record]);
      const known = remembered.get(key);
      if (known) return known;
      const review = reviewer.review(request);
      remembered.set(key, review);
      // What failed may succeed for the next who asks.
      review.catch(() => remembered.delete(key));
      return review;
    },
  };
}
