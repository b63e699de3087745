// Whether this page analyzes its own seat at a table of the server: where the device has a core that nobody needs.
import {
  type CompletedReviews,
  type CompletedReviewsPorts,
  completedReviews,
} from '../room/completed-reviews.ts';

/** One for the page, one for all else on the device, and one to spare. */
const LEAST_CORES = 3;

/** Takes what the server says; elsewhere the server alone analyzes. */
export function analyzeHere(
  code: string,
  on: Pick<CompletedReviewsPorts, 'onMessage' | 'onAnalyzedBy'>,
): CompletedReviews {
  if (navigator.hardwareConcurrency < LEAST_CORES) return { receive: on.onMessage, stop() {} };
  return completedReviews({
    loadCard: async () => (await import('../cards/load-card.ts')).loadCard(code),
    loadStart: async () => (await import('../workers/own-analyses.ts')).startOwnAnalyses,
    ...on,
  });
}
