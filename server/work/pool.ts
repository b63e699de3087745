// Tasks in order of urgency on a few hands. A hand that dies or hangs costs its task one more try, and nothing else.
// Our own: urgency that changes while a task waits, limits on our clock and a twin in process would all have to be
// built around piscina, and what it would then still do is the twenty lines of `thread.ts`.
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Undo } from '../ports.ts';
import { type Hand, TaskFailed } from './hand.ts';
import type { Answer, Task } from './task.ts';

/** What one person waits for comes first, then tables in play, then rounds that are closed. */
export const URGENCIES = ['first', 'live', 'after'] as const;
export type Urgency = (typeof URGENCIES)[number];

/** Tries of one task. */
const TRIES = 2;

export interface PoolPorts {
  readonly clock: Clock;
  readonly log: Log;
  readonly newHand: () => Hand;
  /** Tasks done at the same time. */
  readonly hands: number;
  /** Time for one task before its hand is given up, in milliseconds. */
  readonly patience: number;
}

export interface Order {
  /** Null when it was called off, or failed as often as it may. Never rejects. */
  readonly answer: Promise<Answer | null>;
  /** What is `live` goes first from now on. */
  giveWay(): void;
  callOff(): void;
}

/** How a task stands when a hand takes it up. */
export interface Moment {
  /** 1 for the first try. */
  readonly attempt: number;
  /** Tasks that wait behind this one. */
  readonly waiting: number;
}

/** Made when a hand is free for it, so that it can fit what is then going on. */
export type MakeTask = (moment: Moment) => Task;

interface Job {
  readonly make: MakeTask;
  readonly settle: (answer: Answer | null) => void;
  urgency: Urgency;
  attempt: number;
  calledOff: boolean;
}

export class Pool {
  readonly #ports: PoolPorts;
  readonly #waiting: Job[] = [];
  readonly #idle: Hand[] = [];
  /** Every hand there is, with the job it is at. */
  readonly #hands = new Map<Hand, Job | null>();
  #closed = false;

  constructor(ports: PoolPorts) {
    this.#ports = ports;
  }

  /** Tasks that no hand has taken up yet. */
  get waiting(): number {
    return this.#waiting.length;
  }

  ask(make: MakeTask, urgency: Urgency): Order {
    let settle: Job['settle'] = () => {};
    const answer = new Promise<Answer | null>((resolve) => {
      settle = resolve;
    });
    const job: Job = { make, settle, urgency, attempt: 1, calledOff: false };
    if (this.#closed) settle(null);
    else this.#waiting.push(job);
    this.#work();
    return {
      answer,
      giveWay() {
        job.urgency = 'after';
      },
      // One that is being done is done to its end, and nobody hears of it.
      callOff: () => {
        job.calledOff = true;
        this.#drop(job);
        settle(null);
      },
    };
  }

  /** Gets a hand ready, so that the first task does not wait for it. */
  warm(): void {
    if (this.#closed || this.#hands.size > 0) return;
    this.#idle.push(this.#newHand());
  }

  /** Whatever waits or runs is answered with null; resolves when every hand has ended. */
  async close(): Promise<void> {
    this.#closed = true;
    const hands = [...this.#hands];
    this.#hands.clear();
    for (const job of this.#waiting.splice(0)) job.settle(null);
    for (const [, job] of hands) job?.settle(null);
    await Promise.all(hands.map(([hand]) => hand.end()));
  }

  #work(): void {
    while (this.#waiting.length > 0) {
      const hand = this.#idle.pop() ?? (this.#hands.size < this.#ports.hands ? this.#newHand() : null);
      if (hand === null) return;
      const job = this.#mostUrgent();
      this.#drop(job);
      void this.#do(job, hand);
    }
  }

  /** Of those that are equally urgent the one that has waited longest. */
  #mostUrgent(): Job {
    for (const wanted of URGENCIES) {
      const job = this.#waiting.find(({ urgency }) => urgency === wanted);
      if (job) return job;
    }
    return this.#waiting[0]!;
  }

  async #do(job: Job, hand: Hand): Promise<void> {
    this.#hands.set(hand, job);
    const task = job.make({ attempt: job.attempt, waiting: this.#waiting.length });
    try {
      job.settle(await this.#inTime(hand.run(task)));
      if (this.#closed) return;
      this.#hands.set(hand, null);
      this.#idle.push(hand);
    } catch (error) {
      if (this.#closed) return;
      this.#fail(job, task, error);
      this.#giveUp(hand);
    }
    this.#work();
  }

  #fail(job: Job, { kind }: Task, error: unknown): void {
    const facts = error instanceof TaskFailed ? error.facts : errorFacts(error);
    const again = job.attempt < TRIES && !job.calledOff;
    this.#ports.log.warn({ task: kind, attempt: job.attempt, again, ...facts }, 'a task failed');
    if (!again) {
      job.settle(null);
      return;
    }
    job.attempt++;
    this.#waiting.unshift(job);
  }

  #inTime(answer: Promise<Answer>): Promise<Answer> {
    return new Promise((resolve, reject) => {
      const { clock, patience } = this.#ports;
      const callOff: Undo = clock.after(patience, () => reject(new Error('The task takes too long.')));
      answer.then(resolve, reject).finally(callOff);
    });
  }

  #newHand(): Hand {
    const hand = this.#ports.newHand();
    this.#hands.set(hand, null);
    return hand;
  }

  #giveUp(hand: Hand): void {
    this.#hands.delete(hand);
    hand.end().catch((error: unknown) => {
      this.#ports.log.warn(errorFacts(error), 'a hand did not end');
    });
  }

  #drop(job: Job): void {
    const at = this.#waiting.indexOf(job);
    if (at !== -1) this.#waiting.splice(at, 1);
  }
}
