// Whether this server can take people: its store can be written, and there is room in its queue of slow work.
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store } from '../ports.ts';
import type { Backlog } from '../work-ports.ts';

/** However often somebody asks, the store is tried once in so many milliseconds. */
export const RETRY_MS = 1_000;

export interface ReadinessPorts {
  readonly store: Pick<Store, 'checkWritable'>;
  readonly backlog: Backlog;
  readonly clock: Clock;
  readonly log: Log;
}

export class Readiness {
  readonly #ports: ReadinessPorts;
  #asked: Promise<readonly string[]> | null = null;
  #isReady = true;

  constructor(ports: ReadinessPorts) {
    this.#ports = ports;
  }

  /** What stands in the way, one sentence each. Never rejects. */
  problems(): Promise<readonly string[]> {
    this.#asked ??= this.#look();
    return this.#asked;
  }

  async #look(): Promise<readonly string[]> {
    const { store, backlog, clock } = this.#ports;
    const problems = backlog.isFull ? ['As many bots, reviews and drills wait as can.'] : [];
    let facts = {};
    try {
      await store.checkWritable();
    } catch (error) {
      facts = errorFacts(error);
      problems.push('Nothing can be stored.');
    }
    this.#tell(problems, facts);
    clock.after(RETRY_MS, () => {
      this.#asked = null;
    });
    return problems;
  }

  /** Once at each change, however often somebody asks. */
  #tell(problems: readonly string[], facts: Readonly<Record<string, string>>): void {
    const isReady = problems.length === 0;
    if (isReady === this.#isReady) return;
    this.#isReady = isReady;
    if (isReady) this.#ports.log.info({}, 'the server is ready again');
    else this.#ports.log.error({ problems, ...facts }, 'the server is not ready');
  }
}
