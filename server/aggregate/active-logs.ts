// Logs that are active at this server by their code: found, loaded from the store once, kept up to date, unloaded when idle.
import type { Config } from '../config.ts';
import type { Clock, Store, WakeBus } from '../ports.ts';

/** What one of them is to its server. */
export interface ActiveLog {
  readonly code: string;
  /** When it was last asked for, by the clock of this server. */
  usedAt: number;
  /** Rejects when the store cannot be reached. */
  catchUp(version: number): Promise<void>;
  stop(): void;
}

export interface ActiveLogsPorts {
  readonly store: Pick<Store, 'versions'>;
  readonly clock: Clock;
  /** Null where no other server writes to these logs. */
  readonly bus: WakeBus | null;
  readonly limits: Pick<Config['limits'], 'rooms'>;
  readonly timing: Pick<Config['timing'], 'roomUnload'>;
}

/**
 * How long what is stored is taken for granted where no other server writes, in milliseconds: this server itself removes
 * what is too old, whoever is reading it.
 */
export const RECHECK_MS = 60_000;

export class ActiveLogs<Live extends ActiveLog> {
  readonly #ports: ActiveLogsPorts;
  readonly #load: (code: string) => Promise<Live | null>;
  readonly #found = new Map<string, Promise<Live | null>>();
  readonly #loaded = new Map<string, Live>();
  /** When the store was last asked for each of them. */
  readonly #checkedAt = new Map<string, number>();

  /** `load` answers null where nothing is stored under a code. */
  constructor(ports: ActiveLogsPorts, load: (code: string) => Promise<Live | null>) {
    this.#ports = ports;
    this.#load = load;
  }

  get loaded(): ReadonlyMap<string, Live> {
    return this.#loaded;
  }

  /** Whether one more may become active, once those are gone that nobody has asked for. */
  async hasRoom(): Promise<boolean> {
    const { clock, timing, limits } = this.#ports;
    for (const [code, live] of [...this.#loaded]) {
      if (clock.now() - live.usedAt < timing.roomUnload) continue;
      this.forget(code);
      live.stop();
    }
    return this.#found.size < limits.rooms;
  }

  /** Rejects when the store cannot be reached. */
  async find(code: string): Promise<Live | null> {
    const known = this.#found.get(code);
    const live = await (known ?? this.#firstFound(code));
    if (live === null) return null;
    const { clock, bus } = this.#ports;
    const now = clock.now();
    live.usedAt = now;
    const checkedAt = known ? this.#checkedAt.get(code) : undefined;
    if (checkedAt !== undefined && (bus !== null || now - checkedAt >= RECHECK_MS)) {
      if (!(await this.#catchUp(live))) return null;
      // Only now: a store that did not answer is asked again by the next one, not after another minute.
      this.#checkedAt.set(code, now);
      return live;
    }
    if (checkedAt === undefined) this.#checkedAt.set(code, now);
    return live;
  }

  /** It is to be looked up anew the next time. */
  forget(code: string): void {
    this.#found.delete(code);
    this.#loaded.delete(code);
    this.#checkedAt.delete(code);
  }

  async close(): Promise<void> {
    const found = await Promise.allSettled(this.#found.values());
    for (const one of found) if (one.status === 'fulfilled') one.value?.stop();
  }

  #firstFound(code: string): Promise<Live | null> {
    const found = this.#load(code).then((live) => {
      if (live === null) this.forget(code);
      else this.#loaded.set(code, live);
      return live;
    });
    this.#found.set(code, found);
    // A wrong code must not cost memory, and a store that failed may answer at the next try.
    found.catch(() => this.forget(code));
    return found;
  }

  /** False where it is stored no more. */
  async #catchUp(live: Live): Promise<boolean> {
    const version = (await this.#ports.store.versions([live.code])).get(live.code);
    if (version !== undefined) await live.catchUp(version);
    else {
      this.forget(live.code);
      live.stop();
    }
    return version !== undefined;
  }
}
