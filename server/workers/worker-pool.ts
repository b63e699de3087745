// Does all slow work on a few workers; one that dies or hangs costs its task one more try, and nothing else.
//
// Our own loop, not piscina, which was tried (5.3.2): a task of a seat's record takes it 69 to 79 µs of processor
// time there and back, ours 63, while tasks take 50 ms to 3 s. It would replace about 30 lines of `worker-thread.ts`.
// Around it would still stand all of this file and `work-queue.ts`: it has no turns between rooms, no age limit, no
// task made or re-ranked while it waits, no second try, no worker in process, no way to tell a worker to stop, and its
// queue is emptied without knowing which worker is free, so that no record would stay with its worker.
import { LRUCache } from 'lru-cache';
import { errorFacts, type Log } from '../log.ts';
import type { Cancel, Clock } from '../ports.ts';
import type { TaskResult } from './task.ts';
import { type LeftOutReason, WorkCounts } from './work-counts.ts';
import type { MakeTask, PendingWork, WorkOptions } from './work-options.ts';
import { isWaitedFor, type Priority, type QueueItem, WorkQueue } from './work-queue.ts';
import { TaskFailed, type TaskWorker } from './worker.ts';

/** Tries of one task. */
const MAX_ATTEMPTS = 2;
/** Time for a worker to break off an aborted task before it is ended, in milliseconds. */
export const STOP_GRACE_MS = 2_000;
/** Affinity keys remembered for each worker. */
const WARM_KEYS = 32;

export interface WorkerPoolOptions {
  readonly clock: Clock;
  readonly log: Log;
  readonly newWorker: () => TaskWorker;
  /** Workers at most; they are started when they are needed. */
  readonly maxWorkers: number;
  /** Work that may wait at once; more is left out. */
  readonly maxQueue: number;
}

interface Job extends QueueItem {
  priority: Priority;
  readonly options: WorkOptions;
  readonly make: MakeTask;
  /** Milliseconds since 1970. */
  readonly askedAt: number;
  /** Answers whoever asked; only the first answer counts. */
  readonly settle: (result: TaskResult | null) => void;
  attempt: number;
  isSettled: boolean;
  leftOut: LeftOutReason | null;
  cancelWait: Cancel;
}

interface WorkerState {
  job: Job | null;
  cancelStop: Cancel;
  /** Whether its job was broken off for other work and goes on later. */
  givesWay: boolean;
  readonly warmKeys: LRUCache<string, true>;
}

export class WorkerPool {
  readonly counts: WorkCounts;
  readonly #options: WorkerPoolOptions;
  readonly #queue: WorkQueue<Job>;
  readonly #workers = new Map<TaskWorker, WorkerState>();
  #closed = false;

  constructor(options: WorkerPoolOptions) {
    this.#options = options;
    this.#queue = new WorkQueue(options.maxQueue);
    this.counts = new WorkCounts(options.clock, options.log);
  }

  /** Work that no worker has taken yet. */
  get waiting(): number {
    return this.#queue.size;
  }

  get isFull(): boolean {
    return this.#queue.isFull;
  }

  /** How long the oldest of what waits was asked for ago, in milliseconds; 0 where nothing waits. */
  get oldestMs(): number {
    const now = this.#options.clock.now();
    const waiting = this.#queue.items.filter(({ priority }) => isWaitedFor(priority));
    return waiting.reduce((oldest, { askedAt }) => Math.max(oldest, now - askedAt), 0);
  }

  /** Work that a worker does now. */
  get running(): number {
    return [...this.#workers.values()].filter(({ job }) => job !== null).length;
  }

  run(make: MakeTask, options: WorkOptions): PendingWork {
    let resolve: (result: TaskResult | null) => void = () => {};
    const result = new Promise<TaskResult | null>((settle) => {
      resolve = settle;
    });
    const { signal, priority, fairnessKey, affinityKey } = options;
    const job: Job = {
      priority,
      fairnessKey,
      affinityKey,
      options,
      make,
      askedAt: this.#options.clock.now(),
      attempt: 1,
      isSettled: false,
      leftOut: null,
      cancelWait: () => {},
      settle(answer) {
        job.isSettled = true;
        job.cancelWait();
        signal?.removeEventListener('abort', abort);
        resolve(answer);
      },
    };
    const abort = () => this.#abort(job);
    signal?.addEventListener('abort', abort);
    if (this.#closed || signal?.aborted) job.settle(null);
    else this.#enqueue(job);
    return { result, whyNot: () => job.leftOut, rank: (to) => this.#rank(job, to) };
  }

  /** Starts a worker, so that the first task does not wait for it. */
  warm(): void {
    if (!this.#closed && this.#workers.size === 0) this.#startWorker();
  }

  /** Whatever waits or runs is answered with null; resolves when every worker has ended. */
  async close(): Promise<void> {
    this.#closed = true;
    this.counts.close();
    const workers = [...this.#workers];
    this.#workers.clear();
    for (const job of this.#queue.clear()) job.settle(null);
    for (const [, { job, cancelStop }] of workers) {
      cancelStop();
      job?.settle(null);
    }
    await Promise.all(workers.map(([worker]) => worker.end()));
  }

  #enqueue(job: Job): void {
    if (this.#isOutOfBounds(job.options) || !this.#queue.push(job)) {
      this.#leaveOut(job, 'queue-full');
      return;
    }
    const { maxWaitMs } = job.options;
    job.cancelWait = this.#options.clock.after(maxWaitMs, () => {
      if (this.#queue.delete(job)) this.#leaveOut(job, 'too-old');
    });
    this.#dispatch(job.affinityKey);
    this.#makeWayFor(job);
  }

  /** One worker breaks off what it does for idle hours, and goes on with it when nothing else waits. */
  #makeWayFor({ priority }: Job): void {
    if (!isWaitedFor(priority) || this.#queue.size === 0) return;
    for (const [worker, state] of this.#workers) {
      if (state.job?.priority !== 'idle' || state.givesWay) continue;
      state.givesWay = true;
      worker.stop();
      return;
    }
  }

  #isOutOfBounds({ kind, fairnessKey, bound }: WorkOptions): boolean {
    if (bound === undefined) return false;
    const same = this.#queue.items.filter(({ options }) => options.kind === kind);
    const ofKey = same.filter((job) => job.fairnessKey === fairnessKey);
    return same.length >= bound.inAll || ofKey.length >= bound.perKey;
  }

  #leaveOut(job: Job, reason: LeftOutReason): void {
    // Nobody here misses what was not asked for yet, or what a page does itself.
    if (isWaitedFor(job.priority)) this.counts.leftOut(job.options.kind, reason);
    job.leftOut = reason;
    job.settle(null);
  }

  #rank(job: Job, priority: Priority): void {
    if (job.priority === 'interactive' || job.priority === priority) return;
    const waited = this.#queue.delete(job);
    job.priority = priority;
    if (!waited) return;
    if (this.#queue.push(job)) this.#makeWayFor(job);
    else this.#leaveOut(job, 'queue-full');
  }

  #abort(job: Job): void {
    job.settle(null);
    if (this.#queue.delete(job)) return;
    for (const [worker, state] of this.#workers) {
      if (state.job !== job) continue;
      worker.stop();
      // A worker that is only starting would be ended again and again by a table that plays faster than it starts.
      if (job.priority === 'idle') continue;
      state.cancelStop = this.#options.clock.after(STOP_GRACE_MS, () => {
        this.#endWorker(worker);
        this.#dispatch();
      });
    }
  }

  /** Gives work to every worker that can take some, one that knows `affinityKey` first. */
  #dispatch(affinityKey: string | null = null): void {
    while (!this.#queue.isEmpty) {
      const worker = this.#freeWorker(affinityKey);
      if (worker === null) return;
      const { warmKeys } = this.#workers.get(worker)!;
      const job = this.#queue.take((key) => warmKeys.has(key))!;
      job.cancelWait();
      void this.#perform(job, worker);
    }
  }

  #freeWorker(affinityKey: string | null): TaskWorker | null {
    const free = [...this.#workers].filter(([, { job }]) => job === null);
    const warm = free.find(([, { warmKeys }]) => affinityKey !== null && warmKeys.has(affinityKey));
    const [worker] = warm ?? free.at(-1) ?? [null];
    if (worker !== null) return worker;
    return this.#workers.size < this.#options.maxWorkers ? this.#startWorker() : null;
  }

  async #perform(job: Job, worker: TaskWorker): Promise<void> {
    const state = this.#workers.get(worker)!;
    state.job = job;
    if (job.affinityKey !== null) state.warmKeys.set(job.affinityKey, true);
    const task = job.make({ attempt: job.attempt, waiting: this.#queue.size });
    try {
      job.settle(await this.#inTime(worker.run(task), job.options.timeoutMs));
    } catch (error) {
      if (this.#closed) return;
      // A worker that broke off what nobody wants any more, or what can wait, did as it was told.
      const didAsTold = (job.isSettled || state.givesWay) && error instanceof TaskFailed;
      if (!job.isSettled) {
        if (didAsTold) this.#queue.putBack(job);
        else this.#fail(job, error);
      }
      if (!didAsTold) this.#endWorker(worker);
    }
    state.cancelStop();
    state.givesWay = false;
    state.job = null;
    this.#dispatch();
  }

  #fail(job: Job, error: unknown): void {
    const { kind } = job.options;
    const again = job.attempt < MAX_ATTEMPTS;
    const facts = error instanceof TaskFailed ? error.facts : errorFacts(error);
    this.#options.log.warn({ task: kind, attempt: job.attempt, again, ...facts }, 'a task failed');
    if (again) {
      job.attempt++;
      this.#queue.putBack(job);
    } else {
      this.#leaveOut(job, 'failed');
    }
  }

  #inTime(result: Promise<TaskResult>, timeoutMs: number): Promise<TaskResult> {
    return new Promise((resolve, reject) => {
      const cancel = this.#options.clock.after(timeoutMs, () =>
        reject(new Error('The task takes too long.')),
      );
      result.then(resolve, reject).finally(cancel);
    });
  }

  #startWorker(): TaskWorker {
    const worker = this.#options.newWorker();
    this.#workers.set(worker, {
      job: null,
      cancelStop: () => {},
      givesWay: false,
      warmKeys: new LRUCache({ max: WARM_KEYS }),
    });
    return worker;
  }

  #endWorker(worker: TaskWorker): void {
    if (!this.#workers.delete(worker)) return;
    worker.end().catch((error: unknown) => {
      this.#options.log.warn(errorFacts(error), 'a worker did not end');
    });
  }
}
