// Reviews made in this process, one seat after the other, so that tables in play get their turn in between.
import { setImmediate } from 'node:timers/promises';
import { reviewRound } from '../../shared-engine/index.ts';
import type { Reviewer } from '../ports.ts';

export const reviewerInProcess: Reviewer = {
  async review(record, { kernel }) {
    await setImmediate();
    return reviewRound(record, kernel);
  },
};
