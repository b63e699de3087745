// All classes of this server: opened, found by code, activated from the store, unloaded when nobody asks.
import { Aggregate, type AggregatePorts } from '../aggregate/aggregate.ts';
import { create } from '../aggregate/create.ts';
import { type Rejection, reject } from '../aggregate/decision.ts';
import { replay } from '../aggregate/replay.ts';
import type { Config } from '../config.ts';
import type { CardChoice, Entropy, PlayingCard, Store, Unsubscribe, WakeBus } from '../ports.ts';
import { logTag } from '../secrets.ts';
import { ActiveClass, type ClassPorts } from './active-class.ts';
import { CLASS, type ClassAggregate } from './class.ts';
import type { ClassEvent } from './event.ts';
import { followClasses } from './replication.ts';

export interface ClassesPorts extends ClassPorts, AggregatePorts {
  readonly store: Pick<
    Store,
    'create' | 'load' | 'loadAfter' | 'history' | 'versions' | 'remove' | 'rewrite'
  >;
  readonly entropy: Entropy;
  /** Null where no other server writes to these classes. */
  readonly bus: WakeBus | null;
  readonly playingCard: (choice: CardChoice) => PlayingCard;
  readonly limits: Pick<Config['limits'], 'rooms'>;
  readonly timing: Pick<Config['timing'], 'roomUnload'>;
}

export type ClassOpened = { readonly ok: true; readonly live: ActiveClass } | Rejection;

export class Classes {
  readonly #ports: ClassesPorts;
  readonly #active = new Map<string, Promise<ActiveClass | null>>();
  /** Those of them that are loaded. */
  readonly #loaded = new Map<string, ActiveClass>();
  readonly #unfollow: Unsubscribe;

  constructor(ports: ClassesPorts) {
    this.#ports = ports;
    const { bus } = ports;
    const classes = { active: this.#loaded, forget: (code: string) => this.#forget(code) };
    this.#unfollow = bus ? followClasses(classes, { ...ports, bus }) : () => {};
  }

  /** Rejects when the store cannot be reached. */
  async open(opened: ClassEvent & { kind: 'opened' }): Promise<ClassOpened> {
    await this.#unloadIdle();
    if (this.#active.size >= this.#ports.limits.rooms) return reject('too-many-rooms');
    const code = await create(
      CLASS,
      [opened],
      this.#ports,
      opened.terms.amongFriends ? 'same-deal' : 'class',
    );
    const live = code === null ? null : await this.find(code);
    return live === null ? reject('try-later') : { ok: true, live };
  }

  /** The class with this code, or null. Rejects when the store cannot be reached. */
  async find(code: string): Promise<ActiveClass | null> {
    const known = this.#active.get(code);
    const found = known ?? this.#load(code);
    if (!known) {
      this.#active.set(code, found);
      const forget = () => this.#forget(code);
      // A wrong code must not cost memory, and a store that failed may answer at the next try.
      found.then((live) => (live ? this.#loaded.set(code, live) : forget()), forget);
    }
    const live = await found;
    if (live === null) return null;
    live.usedAt = this.#ports.clock.now();
    if (!known || this.#ports.bus === null) return live;
    return (await this.#catchUp(live)) ? live : null;
  }

  /** Deletes the class and its tables from the store. Rejects when the store cannot be reached. */
  async remove(live: ActiveClass): Promise<void> {
    await live.delete();
    this.#forget(live.code);
  }

  /** Answers every request that waits for a change. */
  async close(): Promise<void> {
    this.#unfollow();
    const classes = await Promise.allSettled(this.#active.values());
    for (const one of classes) if (one.status === 'fulfilled') one.value?.stop();
  }

  /** False where another server has removed the class. */
  async #catchUp(live: ActiveClass): Promise<boolean> {
    const version = (await this.#ports.store.versions([live.code])).get(live.code);
    if (version !== undefined) await live.catchUp(version);
    else {
      this.#forget(live.code);
      live.stop();
    }
    return version !== undefined;
  }

  #forget(code: string): void {
    this.#active.delete(code);
    this.#loaded.delete(code);
  }

  async #load(code: string): Promise<ActiveClass | null> {
    const stored = await this.#ports.store.load(code);
    const replayed = stored && replay(CLASS, stored);
    if (replayed === null) return null;
    const ports = { ...this.#ports, log: this.#ports.log.child({ class: logTag(code) }) };
    const aggregate: ClassAggregate = new Aggregate(CLASS, code, replayed, ports);
    const live = new ActiveClass(aggregate, ports.playingCard(aggregate.state.card), ports);
    await live.reconcile();
    live.analyses.ask();
    return live;
  }

  async #unloadIdle(): Promise<void> {
    const { clock, timing } = this.#ports;
    for (const [code, found] of [...this.#active]) {
      const live = await found.catch(() => null);
      if (live === null || clock.now() - live.usedAt < timing.roomUnload) continue;
      this.#forget(code);
      live.stop();
    }
  }
}
