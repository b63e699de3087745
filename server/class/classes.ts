// All classes of this server: opened, found by code, brought back from the store, put down when nobody asks.
import type { Config } from '../config.ts';
import type { Entropy, WakeBus } from '../ports.ts';
import { type Refusal, turnDown } from '../room/decision.ts';
import { logged } from '../room/room.ts';
import { logTag, newCode } from '../secrets.ts';
import { playingCard } from '../work/cards.ts';
import type { ClassEvent } from './event.ts';
import { replayClass } from './evolve.ts';
import { type ClassPorts, LiveClass } from './live-class.ts';

/** How often a code is drawn anew because it is in use. */
const DRAWS = 5;

export interface ClassesPorts extends ClassPorts {
  readonly entropy: Entropy;
  /** Null where no other server writes to these classes. */
  readonly bus: WakeBus | null;
  readonly limits: Config['limits'];
  readonly pace: Config['pace'];
}

export type ClassOpened = { readonly ok: true; readonly live: LiveClass } | Refusal;

export class Classes {
  readonly #ports: ClassesPorts;
  readonly #live = new Map<string, Promise<LiveClass | null>>();

  constructor(ports: ClassesPorts) {
    this.#ports = ports;
  }

  /** Rejects when the store cannot be reached. */
  async open(opened: ClassEvent & { kind: 'opened' }): Promise<ClassOpened> {
    const { store, clock, entropy, limits } = this.#ports;
    await this.#putDownIdle();
    if (this.#live.size >= limits.rooms) return turnDown('too-many-rooms');
    const events = [{ kind: 'class', event: opened } as const];
    const log = logged(events, { after: 0, at: clock.now(), command: null });
    for (let draw = 0; draw < DRAWS; draw++) {
      const code = newCode(entropy);
      if ((await store.create(code, log)) === 'code-taken') continue;
      const live = await this.find(code);
      if (live !== null) return { ok: true, live };
    }
    return turnDown('try-later');
  }

  /** The class with this code, or null. Rejects when the store cannot be reached. */
  async find(code: string): Promise<LiveClass | null> {
    const known = this.#live.get(code);
    const found = known ?? this.#load(code);
    if (!known) {
      this.#live.set(code, found);
      const forget = () => this.#live.delete(code);
      // A wrong code must not cost memory, and a store that was away may be back at the next try.
      found.then((live) => live ?? forget(), forget);
    }
    const live = await found;
    if (live === null) return null;
    live.usedAt = this.#ports.clock.now();
    if (known && this.#ports.bus !== null) await live.catchUp();
    return live;
  }

  /** Nothing of this class and its tables is kept any more. Rejects when the store cannot be reached. */
  async remove(live: LiveClass): Promise<void> {
    await live.disband();
    this.#live.delete(live.code);
  }

  /** Whoever waits for news is answered. */
  async close(): Promise<void> {
    const classes = await Promise.allSettled(this.#live.values());
    for (const one of classes) if (one.status === 'fulfilled') one.value?.stop();
  }

  async #load(code: string): Promise<LiveClass | null> {
    const { store, log } = this.#ports;
    const state = replayClass((await store.load(code)) ?? []);
    if (state === null) return null;
    const ports = { ...this.#ports, log: log.child({ class: logTag(code) }) };
    const live = new LiveClass(code, state, playingCard(state.card), ports);
    await live.align();
    return live;
  }

  async #putDownIdle(): Promise<void> {
    const { clock, pace } = this.#ports;
    for (const [code, found] of [...this.#live]) {
      const live = await found.catch(() => null);
      if (live === null || clock.now() - live.usedAt < pace.idle) continue;
      this.#live.delete(code);
      live.stop();
    }
  }
}
