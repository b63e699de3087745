// The first review of a seat: in a worker, so that tables in play are served meanwhile, or in this process.
import { setImmediate } from 'node:timers/promises';
import { reviewRound } from '../../shared-engine/index.ts';
import type { Reviewer } from '../ports.ts';
import { slipFor } from './cards.ts';
import type { Pool } from './pool.ts';

/** One seat after the other, so that tables in play get their turn in between. */
export const reviewerInProcess: Reviewer = {
  async review(record, { kernel }, earlier) {
    await setImmediate();
    return reviewRound(record, kernel, earlier);
  },
};

/** What the pool cannot do is done here: a first review is never missing. */
export function pooledReviewer(pool: Pool): Reviewer {
  return {
    async review(record, card, earlier = null) {
      const slip = slipFor(card);
      const answer = await pool.ask(() => ({ kind: 'review', card: slip, record, earlier }), 'live').answer;
      return answer?.kind === 'review' ? answer.review : reviewerInProcess.review(record, card, earlier);
    },
  };
}
