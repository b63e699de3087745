// Jobs that run one at a time, in the order in which they came.

export class SerialQueue {
  #last: Promise<unknown> = Promise.resolve();

  /** Settles as the job does. A job that fails does not stop those behind it. */
  run<T>(job: () => Promise<T>): Promise<T> {
    const result = this.#last.then(job);
    this.#last = result.catch(() => undefined);
    return result;
  }
}
