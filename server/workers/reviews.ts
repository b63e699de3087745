// First reviews and deep analyses from the workers; how deep an analysis goes depends on how much is waiting.
import { setImmediate } from 'node:timers/promises';
import { reviewRound } from '../../shared-engine/index.ts';
import type { AnalysisResult, DeepAnalyzer, Reviewer } from '../ports.ts';
import { cardRefOf, type Depth, type TaskResult } from './task.ts';
import { affinityKeyOf, workOptions } from './work-budgets.ts';
import type { TaskMoment, WorkerPool } from './worker-pool.ts';

/** One seat after the other, so that tables in play get their turn in between. */
export const reviewerInProcess: Reviewer = {
  async review({ record, card, earlier }) {
    await setImmediate();
    return reviewRound(record, card.kernel, earlier);
  },
};

/** What no worker could do is done in this process: a first review is never missing. */
export function pooledReviewer(pool: WorkerPool): Reviewer {
  return {
    async review(request) {
      const { record, earlier = null, fairnessKey } = request;
      const card = cardRefOf(request.card);
      const options = workOptions('review', fairnessKey, affinityKeyOf(record));
      const result = await pool.run(() => ({ kind: 'review', card, record, earlier }), options).result;
      return result?.kind === 'review' ? result.review : reviewerInProcess.review(request);
    },
  };
}

export interface AnalyzerOptions {
  readonly pool: WorkerPool;
  /** How closely a choice is analyzed when there is time. */
  readonly depth: Depth;
  /** With more work waiting than this, choices are analyzed on the small budget. */
  readonly maxQueue: number;
  /** Called with each request: the first review of the same round will be wanted soon. */
  readonly onRequest?: () => void;
}

export function pooledAnalyzer({ pool, depth, maxQueue, onRequest }: AnalyzerOptions): DeepAnalyzer {
  /** A second try is a shorter one: the first may have taken too long. */
  function depthAt({ attempt, waiting }: TaskMoment): Depth {
    return attempt > 1 || waiting > maxQueue ? 'shallow' : depth;
  }

  return {
    analyze({ record, nth, card: playingCard, fairnessKey }, signal) {
      onRequest?.();
      const card = cardRefOf(playingCard);
      const options = workOptions('analyze', fairnessKey, affinityKeyOf(record), signal);
      let used = depth;
      const pending = pool.run((moment) => {
        used = depthAt(moment);
        return { kind: 'analyze', card, record, nth, depth: used };
      }, options);
      const analyzed = (result: TaskResult | null): AnalysisResult | null =>
        result?.kind === 'analyze' ? { analysis: result.analysis, reducedBudget: used !== depth } : null;
      return { result: pending.result.then(analyzed), lowerPriority: pending.lowerPriority };
    },
  };
}
