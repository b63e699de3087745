// Reads a club's page again and again: what was asked for last counts, and a key is brought until the server judges it.
import type { ClubPage } from '../../../shared-engine/index.ts';
import type { ApiResult, Failure } from '../../connection/api.ts';

export interface ClubReaderPorts {
  bring(key: string): Promise<ApiResult<null>>;
  fetch(): Promise<ApiResult<ClubPage>>;
  told(answer: ApiResult<ClubPage>): void;
  /** Why the key that was brought last does not make this browser a teacher's. */
  keyFailed(failure: Failure): void;
}

/** Answers after which the same key would get the same answer. */
const JUDGED: readonly string[] = ['wrong-key', 'no-such-club', 'bad-request'];

export class ClubReader {
  readonly #ports: ClubReaderPorts;
  #key: string | null;
  #latest = 0;

  constructor(ports: ClubReaderPorts, key: string | null) {
    this.#ports = ports;
    this.#key = key;
  }

  async read(): Promise<void> {
    this.#latest += 1;
    const nth = this.#latest;
    await this.#bringKey();
    const answer = await this.#ports.fetch();
    if (nth === this.#latest) this.#ports.told(answer);
  }

  /** Nothing is told of what was asked for before. */
  end(): void {
    this.#latest += 1;
  }

  async #bringKey(): Promise<void> {
    const key = this.#key;
    if (key === null) return;
    const brought = await this.#ports.bring(key);
    // The address holds it no more: without a network it is brought with the next reading.
    if (brought.ok || JUDGED.includes(brought.code)) this.#key = null;
    if (!brought.ok) this.#ports.keyFailed(brought);
  }
}
