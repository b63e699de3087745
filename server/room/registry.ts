// All rooms of this server: opened, found by code, brought back from the store, put down when idle.
import { CLOSE } from '../../shared-engine/index.ts';
import type { Config } from '../config.ts';
import { errorFacts } from '../log.ts';
import type { Undo, WakeBus } from '../ports.ts';
import { newCode } from '../secrets.ts';
import { playingCard } from '../work/cards.ts';
import type { ClassOpening, Opening } from './command.ts';
import { openingEvents } from './decide.ts';
import { type Refusal, turnDown } from './decision.ts';
import { followOthers } from './following.ts';
import { bringToLife, type LivePorts, type LiveRoom } from './live.ts';
import { callRoll, ROLL_CALL_MS } from './roll-call.ts';
import { logged } from './room.ts';
import { goneSince, personsOf, roundRuns } from './state.ts';

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
  #callOffRoll: Undo = () => {};
  #stopped = false;

  constructor(ports: RegistryPorts) {
    this.#ports = ports;
    this.#planSweep();
    this.#planRoll();
    const { bus } = ports;
    const rooms = { live: this.#live, forget: (code: string) => this.#forget(code) };
    this.#unfollow = bus ? followOthers(rooms, { ...ports, bus }) : () => {};
  }

  /** How many rooms are at work here. */
  get inHand(): number {
    return this.#live.size;
  }

  /** Rejects when the store cannot be reached. */
  async open(opening: Opening | ClassOpening): Promise<Opened> {
    const { store, clock, entropy, limits } = this.#ports;
    if (this.#rooms.size >= limits.rooms) return turnDown('too-many-rooms');
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
    this.#callOffRoll();
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
    const { store, nodes, log } = this.#ports;
    const events = await store.load(code);
    const live = events && bringToLife(code, events, ({ card }) => playingCard(card), this.#ports);
    if (live) void callRoll([live], nodes, log);
    return live;
  }

  #forget(code: string): void {
    this.#rooms.delete(code);
    this.#live.delete(code);
  }

  #planRoll(): void {
    const { clock, nodes, log } = this.#ports;
    this.#callOffRoll = clock.after(ROLL_CALL_MS, () => {
      void callRoll([...this.#live.values()], nodes, log).finally(() => {
        if (!this.#stopped) this.#planRoll();
      });
    });
  }

  #planSweep(): void {
    const { clock, pace } = this.#ports;
    this.#callOff = clock.after(Math.ceil(pace.idle / 4), () => {
      void this.#sweep().finally(() => {
        if (!this.#stopped) this.#planSweep();
      });
    });
  }

  /** Idle rooms leave the memory and stay in the store; those that are too old leave the store. */
  async #sweep(): Promise<void> {
    const { store, clock, pace, log } = this.#ports;
    for (const [code, live] of [...this.#live]) {
      if (live.table.listeners > 0 || !this.#isIdle(live)) continue;
      this.#forget(code);
      await live.stop();
    }
    try {
      const removed = await store.removeOlder(clock.now() - pace.keep);
      if (removed > 0) await this.#dropRemoved();
    } catch (error) {
      log.warn(errorFacts(error), 'old rooms could not be removed');
    }
  }

  async #dropRemoved(): Promise<void> {
    const versions = await this.#ports.store.versions([...this.#live.keys()]);
    for (const [code, live] of [...this.#live]) {
      if (versions.has(code)) continue;
      this.#forget(code);
      live.table.endAll(CLOSE.goingAway);
      await live.stop();
    }
  }

  /** A room whose clock runs is at work, whoever is there. */
  #isIdle({ room }: LiveRoom): boolean {
    const { clock, pace } = this.#ports;
    const { state } = room;
    if (state.terms.deadline !== null && roundRuns(state)) return false;
    const seen = personsOf(state).map((person) => goneSince(person) ?? clock.now());
    return clock.now() - Math.max(state.at, ...seen) >= pace.idle;
  }
}
