// Gathers what rooms and classes have to store, commits it in batches, and tells all of a batch in one turn.
import type { Append, AppendOutcome, Store } from '../ports.ts';

/** Members of one batch at most, so that a turn of the event loop stays short; the others are the next batch. */
const MAX_BATCH = 64;
/** Turns of the event loop that a batch may go on gathering in, as long as each of them brings more. */
const MAX_TURNS = 8;

/** Something that has commands waiting. */
export interface Member {
  /** Decides the commands that wait now; null where nothing is to be stored. Never throws. */
  plan(): Append | null;
  /** What became of the row that was planned. */
  committed(outcome: AppendOutcome): void;
  /** The store could not be reached, or its answer was lost. */
  failed(error: unknown): void;
}

/**
 * Gathering takes no timer: a batch grows until a turn of the event loop brings nothing, and what arrives while the
 * store is busy is the next batch. So a lone command hardly waits, and the busier the server, the larger the batch:
 * a commit costs about the same however much is in it. Members are served in the order in which they came.
 */
export class Committer {
  readonly #store: Pick<Store, 'commit'>;
  #waiting: Member[] = [];
  #running = false;

  constructor(store: Pick<Store, 'commit'>) {
    this.#store = store;
  }

  /** To be called once for each time the member is to be planned. */
  enqueue(member: Member): void {
    this.#waiting.push(member);
    if (this.#running) return;
    this.#running = true;
    this.#gather(this.#waiting.length, MAX_TURNS);
  }

  #gather(had: number, turns: number): void {
    setImmediate(() => {
      const has = this.#waiting.length;
      if (turns > 0 && has > had && has < MAX_BATCH) return this.#gather(has, turns - 1);
      void this.#commit(this.#waiting.splice(0, MAX_BATCH));
    });
  }

  async #commit(members: readonly Member[]): Promise<void> {
    const planned = members.flatMap((member) => {
      const append = member.plan();
      return append ? [{ member, append }] : [];
    });
    if (planned.length > 0) {
      try {
        const outcomes = await this.#store.commit(planned.map(({ append }) => append));
        for (const [n, { member }] of planned.entries()) member.committed(outcomes[n] ?? 'invalid');
      } catch (error) {
        for (const { member } of planned) member.failed(error);
      }
    }
    if (this.#waiting.length > 0) return this.#gather(this.#waiting.length, MAX_TURNS);
    this.#running = false;
  }
}
