// Many small writes, one durable transaction: what is asked for in a few busy turns of the event loop is kept together.

/** Writes that share one transaction at most, so that a turn stays short; the others wait for the next one. */
const MOST = 256;
/** Turns of the event loop that a group may go on gathering in, as long as each of them brings more. */
const MOST_TURNS = 8;

interface Job {
  /** Runs inside the transaction. */
  work(): void;
  kept(): void;
  failed(error: unknown): void;
}

/**
 * Gathering takes no timer: the group grows until a turn of the event loop brings nothing, and writes that arrive
 * while the disk is busy are the next group. So a lone write never waits, and the busier the server the larger the
 * group: a commit costs the disk about the same however much is in it.
 */
export class GroupCommit {
  readonly #transaction: (work: () => void) => void;
  readonly #spoilsAll: (error: unknown) => boolean;
  #waiting: Job[] = [];
  #planned = false;

  /**
   * `transaction` runs its work and resolves to nothing before it is durable, or throws and has changed nothing.
   * `spoilsAll` tells an error of the whole place (disk full, file locked) from one of a single write.
   */
  constructor(transaction: (work: () => void) => void, spoilsAll: (error: unknown) => boolean) {
    this.#transaction = transaction;
    this.#spoilsAll = spoilsAll;
  }

  /** Resolves with what `work` returned when that is durable. `work` may run twice, the first time in vain. */
  run<T>(work: () => T): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      let outcome: () => void = () => {};
      this.#waiting.push({
        work() {
          const result = work();
          outcome = () => resolve(result);
        },
        kept: () => outcome(),
        failed: reject,
      });
      this.#plan();
    });
  }

  /** Keeps everything that waits, now. */
  flush(): void {
    while (this.#waiting.length > 0) this.#keep(this.#waiting.splice(0, MOST));
  }

  #plan(): void {
    if (this.#planned) return;
    this.#planned = true;
    this.#gather(this.#waiting.length, MOST_TURNS);
  }

  #gather(had: number, turns: number): void {
    setImmediate(() => {
      const has = this.#waiting.length;
      if (turns > 0 && has > had && has < MOST) return this.#gather(has, turns - 1);
      this.#planned = false;
      this.#keep(this.#waiting.splice(0, MOST));
      if (this.#waiting.length > 0) this.#plan();
    });
  }

  #keep(jobs: readonly Job[]): void {
    if (jobs.length === 0) return;
    try {
      this.#transaction(() => {
        for (const job of jobs) job.work();
      });
    } catch (error) {
      if (jobs.length === 1 || this.#spoilsAll(error)) {
        for (const job of jobs) job.failed(error);
      } else {
        // One write is at fault; its neighbours must not suffer for it.
        for (const job of jobs) this.#keep([job]);
      }
      return;
    }
    for (const job of jobs) job.kept();
  }
}
