// All rooms of this server: opened, found by code, activated from the store, unloaded when idle.
import { CLOSE } from '../../shared-engine/index.ts';
import { create } from '../aggregate/create.ts';
import { type Rejection, reject } from '../aggregate/decision.ts';
import type { Config } from '../config.ts';
import { errorFacts } from '../log.ts';
import type { Cancel, Store, Unsubscribe, WakeBus } from '../ports.ts';
import { checkPresence, PRESENCE_CHECK_MS } from '../presence/presence-check.ts';
import type { Opening } from '../room/command.ts';
import { openingEvents } from '../room/decide.ts';
import { roomWith } from '../room/room.ts';
import { disconnectedSince, isRoundRunning, personsOf } from '../room/state.ts';
import { type ActiveRoom, type ActiveRoomPorts, activate } from './active-room.ts';
import { EmptyRooms } from './empty-rooms.ts';
import { followOthers } from './replication.ts';

export interface RegistryPorts extends ActiveRoomPorts {
  readonly store: Pick<Store, 'create' | 'load' | 'loadAfter' | 'versions' | 'removeOlder' | 'removeBeyond'>;
  readonly limits: Pick<Config['limits'], 'rooms' | 'emptyRoomsPerIp' | 'storedBytes'>;
  /** Null where no other server writes to these rooms. */
  readonly bus: WakeBus | null;
}

/** Longest pause between two sweeps, in milliseconds: what is given back is given back in minutes. */
const MAX_SWEEP_MS = 60_000;

export type Opened = { readonly ok: true; readonly live: ActiveRoom } | Rejection;

export interface StoredOpening extends Opening {
  /** Whether the room is stored for as long as a class is, whose report is about it. */
  readonly isKeptWithClass?: boolean;
}

export class Registry {
  readonly #ports: RegistryPorts;
  readonly #rooms = new Map<string, Promise<ActiveRoom | null>>();
  /** Those of them that are loaded. */
  readonly #active = new Map<string, ActiveRoom>();
  readonly #empty: EmptyRooms;
  readonly #unfollow: Unsubscribe;
  #cancelSweep: Cancel = () => {};
  #cancelCheck: Cancel = () => {};
  #stopped = false;

  constructor(ports: RegistryPorts) {
    this.#ports = ports;
    this.#empty = new EmptyRooms(ports.limits.emptyRoomsPerIp);
    this.#planSweep();
    this.#planCheck();
    this.#unfollow = ports.bus ? this.#follow(ports.bus) : () => {};
  }

  /** How many rooms are active here. */
  get active(): number {
    return this.#active.size;
  }

  /** `from` is the address of whoever asks, as the limits count it. Rejects when the store cannot be reached. */
  async open({ isKeptWithClass, ...opening }: StoredOpening, from: string): Promise<Opened> {
    const { limits, policies } = this.#ports;
    if (this.#rooms.size >= limits.rooms) return reject('too-many-rooms');
    if (this.#empty.hasTooMany(from)) return reject('too-many-empty-rooms');
    const code = await create(
      roomWith(policies[opening.mode]),
      openingEvents(opening),
      this.#ports,
      isKeptWithClass ? 'class-table' : 'room',
    );
    const live = code === null ? null : await this.find(code);
    if (live === null) return reject('try-later');
    this.#empty.add(from, live);
    return { ok: true, live };
  }

  /** The room with this code, or null. Rejects when the store cannot be reached. */
  async find(code: string): Promise<ActiveRoom | null> {
    const known = this.#rooms.get(code);
    if (known) return this.#upToDate(code, known);
    const found = this.#load(code);
    this.#rooms.set(code, found);
    const forget = () => {
      if (this.#rooms.get(code) === found) this.#forget(code);
    };
    // A wrong code must not cost memory, and a store that was away may be back at the next try.
    found.then((live) => (live ? this.#active.set(code, live) : forget()), forget);
    return found;
  }

  /** Nothing new begins in any room; resolves when everything begun is stored. */
  async close(): Promise<void> {
    this.#stopped = true;
    this.#cancelSweep();
    this.#cancelCheck();
    this.#unfollow();
    const rooms = await Promise.allSettled(this.#rooms.values());
    await Promise.all(rooms.map((room) => room.status === 'fulfilled' && room.value?.stop()));
  }

  #follow(bus: WakeBus): Unsubscribe {
    const { log } = this.#ports;
    const following = {
      active: this.#active,
      logOf: ({ room }: ActiveRoom) => room,
      removed: (live: ActiveRoom) => {
        this.#forget(live.room.code);
        void live.stop();
        live.broadcaster.endAll(CLOSE.goingAway);
      },
      reachable: (yes: boolean) => {
        if (yes) log.info({}, 'the store answers again');
        else log.error({}, 'the store is away');
        for (const { broadcaster } of this.#active.values()) {
          broadcaster.sendToAll({ kind: 'storage', writable: yes });
        }
      },
    };
    return followOthers(following, { ...this.#ports, bus });
  }

  /** Who sat down at another server a moment ago must find the seat at this one. */
  async #upToDate(code: string, known: Promise<ActiveRoom | null>): Promise<ActiveRoom | null> {
    const live = await known;
    const { bus, store } = this.#ports;
    if (live === null || bus === null) return live;
    const versions = await store.versions([code]);
    await live.room.catchUp(versions.get(code) ?? 0);
    return live;
  }

  async #load(code: string): Promise<ActiveRoom | null> {
    if (this.#stopped) return null;
    const { store, nodes, log } = this.#ports;
    const stored = await store.load(code);
    const live = stored && activate(code, stored, this.#ports);
    if (live) void checkPresence([live], nodes, log);
    return live;
  }

  #forget(code: string): void {
    const live = this.#active.get(code);
    if (live) this.#empty.delete(live);
    this.#rooms.delete(code);
    this.#active.delete(code);
  }

  #planCheck(): void {
    const { clock, nodes, log } = this.#ports;
    this.#cancelCheck = clock.after(PRESENCE_CHECK_MS, () => {
      void checkPresence([...this.#active.values()], nodes, log).finally(() => {
        if (!this.#stopped) this.#planCheck();
      });
    });
  }

  #planSweep(): void {
    const { clock, timing } = this.#ports;
    this.#cancelSweep = clock.after(Math.min(MAX_SWEEP_MS, Math.ceil(timing.roomUnload / 4)), () => {
      void this.#sweep().finally(() => {
        if (!this.#stopped) this.#planSweep();
      });
    });
  }

  /** Idle rooms leave the memory and stay in the store; logs that are too old or too many leave the store. */
  async #sweep(): Promise<void> {
    const { store, clock, timing, limits, log } = this.#ports;
    for (const [code, live] of [...this.#active]) {
      if (live.broadcaster.listeners > 0 || !this.#isIdle(live)) continue;
      this.#forget(code);
      await live.stop();
    }
    try {
      const old = await store.removeOlder({
        rooms: clock.now() - timing.retention,
        classes: clock.now() - timing.classRetention,
      });
      const beyond =
        limits.storedBytes === Number.POSITIVE_INFINITY ? 0 : await store.removeBeyond(limits.storedBytes);
      if (beyond > 0)
        log.warn({ rooms: beyond }, 'RETENTION_MB is reached; the rooms untouched longest were removed');
      if (old + beyond > 0) await this.#dropRemoved();
    } catch (error) {
      log.warn(errorFacts(error), 'old rooms could not be removed');
    }
  }

  async #dropRemoved(): Promise<void> {
    const versions = await this.#ports.store.versions([...this.#active.keys()]);
    for (const [code, live] of [...this.#active]) {
      if (versions.has(code)) continue;
      this.#forget(code);
      live.broadcaster.endAll(CLOSE.goingAway);
      await live.stop();
    }
  }

  /** A room whose clock runs is in use, whoever is there. */
  #isIdle({ room: { state } }: ActiveRoom): boolean {
    const { clock, timing } = this.#ports;
    if (state.terms.deadline !== null && isRoundRunning(state)) return false;
    const seen = personsOf(state).map((person) => disconnectedSince(person) ?? clock.now());
    return clock.now() - Math.max(state.at, ...seen) >= timing.roomUnload;
  }
}
