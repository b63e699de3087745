// All rooms of this server: opened, found by code, brought back from the store, dropped when idle.
import type { Config } from '../config.ts';
import type { Undo, WakeBus } from '../ports.ts';
import { newCode } from '../secrets.ts';
import { playingCard } from '../work/cards.ts';
import type { Opening } from './command.ts';
import { openingEvents } from './decide.ts';
import { type Refusal, turnDown } from './decision.ts';
import { followOthers } from './following.ts';
import { bringToLife, type LivePorts, type LiveRoom } from './live.ts';
import { logged } from './room.ts';

/** How often a code is drawn anew because it is in use; with 8 × 10¹¹ codes once is already rare. */
const DRAWS = 5;

export interface RegistryPorts extends LivePorts {
  readonly limits: Config['limits'];
  /** Null where no other server writes to these rooms. */
  readonly bus: WakeBus | null;
}

export type Opened = { readonly ok: true; readonly live: LiveRoom } | Refusal;

export class Registry {
  readonly #ports: RegistryPorts;
  readonly #rooms = new Map<string, Promise<LiveRoom | null>>();
  /** Those of them that have arrived. */
  readonly #live = new Map<string, LiveRoom>();
  readonly #unfollow: Undo;
  #callOff: Undo = () => {};
  #stopped = false;

  constructor(ports: RegistryPorts) {
    this.#ports = ports;
    this.#planSweep();
    const { bus } = ports;
    const rooms = { live: this.#live, forget: (code: string) => this.#forget(code) };
    this.#unfollow = bus ? followOthers(rooms, { ...ports, bus }) : () => {};
  }

  /** Rejects when the store cannot be reached. */
  async open(opening: Opening): Promise<Opened> {
    const { store, clock, entropy, limits } = this.#ports;
    if ((await store.count()) >= limits.rooms) return turnDown('too-many-rooms');
    const log = logged(openingEvents(opening), { after: 0, at: clock.now(), command: null });
    for (let draw = 0; draw < DRAWS; draw++) {
      const code = newCode(entropy);
      if ((await store.create(code, log)) === 'code-taken') continue;
      const live = await this.find(code);
      if (live !== null) return { ok: true, live };
    }
    return turnDown('try-later');
  }

  /** The room with this code, or null. Rejects when the store cannot be reached. */
  async find(code: string): Promise<LiveRoom | null> {
    const known = this.#rooms.get(code);
    if (known) return this.#upToDate(code, known);
    const found = this.#load(code);
    this.#rooms.set(code, found);
    const forget = () => {
      if (this.#rooms.get(code) === found) this.#forget(code);
    };
    // A wrong code must not cost memory, and a store that was away may be back at the next try.
    found.then((live) => (live ? this.#live.set(code, live) : forget()), forget);
    return found;
  }

  /** Nothing new begins in any room; resolves when everything begun is kept. */
  async close(): Promise<void> {
    this.#stopped = true;
    this.#callOff();
    this.#unfollow();
    const rooms = await Promise.allSettled(this.#rooms.values());
    await Promise.all(rooms.map((room) => room.status === 'fulfilled' && room.value?.stop()));
  }

  /** Who sat down at another server a moment ago must find the seat at this one. */
  async #upToDate(code: string, known: Promise<LiveRoom | null>): Promise<LiveRoom | null> {
    const live = await known;
    const { bus, store } = this.#ports;
    if (live === null || bus === null) return live;
    const versions = await store.versions([code]);
    await live.room.catchUp(versions.get(code) ?? 0);
    return live;
  }

  async #load(code: string): Promise<LiveRoom | null> {
    if (this.#stopped) return null;
    const log = await this.#ports.store.load(code);
    return log && bringToLife(code, log, ({ card }) => playingCard(card), this.#ports);
  }

  #forget(code: string): void {
    this.#rooms.delete(code);
    this.#live.delete(code);
  }

  #planSweep(): void {
    const { clock, pace } = this.#ports;
    this.#callOff = clock.after(Math.ceil(pace.idle / 4), () => {
      void this.#sweep().finally(() => {
        if (!this.#stopped) this.#planSweep();
      });
    });
  }

  async #sweep(): Promise<void> {
    for (const [code, found] of [...this.#rooms]) {
      const live = await found.catch(() => null);
      if (live === null || live.table.listeners > 0 || !this.#isIdle(live)) continue;
      const answer = await live.room.submit({ kind: 'close' });
      if (!answer.ok) continue;
      this.#forget(code);
      await this.#ports.store.remove(code).catch(() => undefined);
    }
    // What a restart left behind and nobody came back to.
    const { store, clock, pace } = this.#ports;
    await store.removeOlder(clock.now() - Math.max(pace.keep, pace.idle)).catch(() => undefined);
  }

  #isIdle({ room, table }: LiveRoom): boolean {
    const { clock, pace } = this.#ports;
    const seen = room.state.chairs.flatMap((chair) =>
      chair.kind === 'person' ? [table.goneSince(chair) ?? clock.now()] : [],
    );
    return clock.now() - Math.max(room.state.at, ...seen) >= pace.idle;
  }
}
