// All workers of a server and the ports that they stand behind: short tasks have a worker of their own.
import { loadSimd } from '../../shared-engine/index.ts';
import type { ReviewSettings } from '../config.ts';
import type { Log } from '../log.ts';
import type { Clock } from '../ports.ts';
import type { Backlog, Bots, Cards, DeepAnalyzer, Drills, Reviewer } from '../work-ports.ts';
import { botsInProcess, pooledBots } from './bots.ts';
import { CompiledCards } from './compiled-cards.ts';
import { pooledDrills } from './drills.ts';
import { pooledAnalyzer, pooledReviewer } from './reviews.ts';
import { createTaskRunner } from './task-runner.ts';
import type { WorkCount } from './work-counts.ts';
import { type TaskWorker, workerInProcess } from './worker.ts';
import { WorkerPool } from './worker-pool.ts';
import { workerInThread } from './worker-thread.ts';

/** Tasks that may wait in each pool: more than a worker does before they are too old, and a bound for memory. */
const MAX_QUEUE = 5_000;

export interface Workers {
  readonly bots: Bots;
  readonly reviewer: Reviewer;
  readonly drills: Drills;
  readonly cards: Cards;
  /** Null where first answers are all that is wanted. */
  readonly analyzer: DeepAnalyzer | null;
  /** Cards compiled since the start. */
  readonly cardsCompiled: number;
  /** Tasks that workers do now. */
  readonly running: number;
  /** Tasks that wait now. */
  readonly backlog: Backlog;
  /** Tasks that were left out since the start. */
  readonly leftOut: readonly WorkCount[];
  /** Ends all workers; who waits for an answer gets none. */
  close(): Promise<void>;
}

export function openWorkers({ workers, depth, maxQueue }: ReviewSettings, clock: Clock, log: Log): Workers {
  const runner = workers === 0 ? loadSimd().then((simd) => createTaskRunner(simd)) : null;
  const newWorker = (lowPriority: boolean) => (): TaskWorker =>
    runner ? workerInProcess(runner) : workerInThread(lowPriority);
  const shared = { clock, log, maxQueue: MAX_QUEUE };
  const maxWorkers = Math.max(1, workers);
  // First reviews and bots never wait behind an analysis of seconds.
  const shortTasks = new WorkerPool({ ...shared, newWorker: newWorker(false), maxWorkers: 1 });
  const longTasks = new WorkerPool({ ...shared, newWorker: newWorker(true), maxWorkers });
  const pools = [shortTasks, longTasks];
  // Behind whatever a worker does just now, and not before bots and first reviews: a stranger may send any number of cards.
  const cards = new CompiledCards(longTasks, clock);
  const analyzer =
    depth === 'quick'
      ? null
      : pooledAnalyzer({
          pool: longTasks,
          cards,
          // In this process, tables wait while a choice is analyzed.
          depth: workers === 0 ? 'shallow' : depth,
          maxQueue: maxQueue * maxWorkers,
          onRequest: () => shortTasks.warm(),
        });
  return {
    bots: pooledBots(shortTasks, cards, botsInProcess(log)),
    reviewer: pooledReviewer(shortTasks, cards),
    drills: pooledDrills(longTasks, cards),
    cards,
    analyzer,
    get cardsCompiled() {
      return cards.count;
    },
    get running() {
      return pools.reduce((sum, pool) => sum + pool.running, 0);
    },
    backlog: backlogOf(pools),
    get leftOut() {
      return pools.flatMap((pool) => pool.counts.all);
    },
    async close() {
      await Promise.all(pools.map((pool) => pool.close()));
    },
  };
}

function backlogOf(pools: readonly WorkerPool[]): Backlog {
  return {
    get waiting() {
      return pools.reduce((sum, pool) => sum + pool.waiting, 0);
    },
    get oldestMs() {
      return Math.max(...pools.map((pool) => pool.oldestMs));
    },
    get isFull() {
      return pools.some((pool) => pool.isFull);
    },
  };
}
