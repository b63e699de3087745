// One job at a time, in the order they came.

export class Mailbox {
  #last: Promise<unknown> = Promise.resolve();
  #waiting = 0;

  /** Jobs that wait or run. */
  get waiting(): number {
    return this.#waiting;
  }

  /** Settles as the job does. A job that fails does not stop those behind it. */
  run<T>(job: () => Promise<T>): Promise<T> {
    this.#waiting++;
    const result = this.#last.then(job).finally(() => {
      this.#waiting--;
    });
    this.#last = result.catch(() => undefined);
    return result;
  }

  /** Resolves when every job given so far is over. */
  async drained(): Promise<void> {
    await this.#last;
  }
}
