// First reviews and deep analyses from the workers; how deep an analysis goes depends on how much is waiting.
import { setImmediate } from 'node:timers/promises';
import { reviewRound } from '../../shared-engine/index.ts';
import type { AnalysisResult, DeepAnalyzer, Reviewer } from '../work-ports.ts';
import type { CompiledCards } from './compiled-cards.ts';
import { kernelInProcess } from './in-process.ts';
import type { Depth, Task, TaskResult } from './task.ts';
import { affinityKeyOf, workOptions } from './work-budgets.ts';
import type { PendingWork, TaskMoment } from './work-options.ts';
import type { WorkerPool } from './worker-pool.ts';

/** One seat after the other, so that tables in play get their turn in between. */
export function reviewerInProcess(): Reviewer {
  return {
    async review({ record, card, earlier }) {
      await setImmediate();
      const kernel = kernelInProcess(card);
      if (kernel === null) throw new Error('No worker could review a round on this card.');
      return reviewRound(record, kernel, earlier);
    },
  };
}

/** What no worker could do on the house card is done in this process: its first review is never missing. */
export function pooledReviewer(pool: WorkerPool, cards: CompiledCards): Reviewer {
  const inProcess = reviewerInProcess();
  return {
    async review(request) {
      const { record, earlier = null, fairnessKey } = request;
      const card = await cards.refOf(request.card, fairnessKey);
      if (card === null) return inProcess.review(request);
      const options = workOptions('review', fairnessKey, affinityKeyOf(record));
      const result = await pool.run(() => ({ kind: 'review', card, record, earlier }), options).result;
      return result?.kind === 'review' ? result.review : inProcess.review(request);
    },
  };
}

export interface AnalyzerOptions {
  readonly pool: WorkerPool;
  readonly cards: CompiledCards;
  /** How closely a choice is analyzed when there is time. */
  readonly depth: Depth;
  /** With more work waiting than this, choices are analyzed on the small budget. */
  readonly maxQueue: number;
  /** Called with each request: the first review of the same round will be wanted soon. */
  readonly onRequest?: () => void;
}

export function pooledAnalyzer(analyzer: AnalyzerOptions): DeepAnalyzer {
  const { pool, cards, depth, maxQueue, onRequest } = analyzer;

  /** A second try is a shorter one: the first may have taken too long. */
  function depthAt({ attempt, waiting }: TaskMoment): Depth {
    return attempt > 1 || waiting > maxQueue ? 'shallow' : depth;
  }

  return {
    analyze({ record, nth, card: playingCard, fairnessKey }, signal, rank) {
      onRequest?.();
      const options = workOptions('analyze', fairnessKey, affinityKeyOf(record), signal);
      let used = depth;
      let pending: PendingWork | null = null;
      let priority = rank;
      const analyzed = (result: TaskResult | null): AnalysisResult | null =>
        result?.kind === 'analyze' ? { analysis: result.analysis, reducedBudget: used !== depth } : null;
      const analysis = async () => {
        const card = await cards.refOf(playingCard, fairnessKey);
        if (card === null) return null;
        pending = pool.run(
          (moment) => {
            used = depthAt(moment);
            return { kind: 'analyze', card, record, nth, depth: used };
          },
          { ...options, priority },
        );
        return analyzed(await pending.result);
      };
      return {
        result: analysis(),
        rank(to) {
          if (priority !== 'interactive') priority = to;
          pending?.rank(to);
        },
      };
    },
    prepare({ record, open, card: playingCard, fairnessKey }, signal) {
      // What runs in this process holds tables up, and nobody has asked for it.
      if (depth !== 'deep') return;
      const options = workOptions('prepare', fairnessKey, affinityKeyOf(record), signal);
      void cards.refOf(playingCard, fairnessKey).then((card) => {
        if (card !== null) pool.run(() => ({ kind: 'prepare', card, record, open }), options);
      });
    },
    async ledger({ record, card: playingCard, fairnessKey }, signal) {
      const options = workOptions('ledger', fairnessKey, affinityKeyOf(record), signal);
      const card = await cards.refOf(playingCard, fairnessKey);
      if (card === null) return null;
      const make = (moment: TaskMoment): Task => ({ kind: 'ledger', card, record, depth: depthAt(moment) });
      const result = await pool.run(make, options).result;
      return result?.kind === 'ledger' ? result.ledger : null;
    },
  };
}
