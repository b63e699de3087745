// All published drills of this server: published, found by code, loaded from the store, unloaded when nobody asks.
import { Aggregate, type AggregatePorts } from '../aggregate/aggregate.ts';
import { create } from '../aggregate/create.ts';
import { type Rejection, reject } from '../aggregate/decision.ts';
import { replay } from '../aggregate/replay.ts';
import type { Config } from '../config.ts';
import type { CardChoice, Entropy, PlayingCard, Store, WakeBus } from '../ports.ts';
import { logTag } from '../secrets.ts';
import { ActiveDrill, type ActiveDrillPorts } from './active-drill.ts';
import type { PublishedEvent } from './event.ts';
import { PUBLISHED, type PublishedAggregate } from './published.ts';

export interface PublishedDrillsPorts extends ActiveDrillPorts, AggregatePorts {
  readonly store: Pick<Store, 'create' | 'load' | 'loadAfter' | 'versions' | 'remove'>;
  readonly entropy: Entropy;
  /** Null where no other server writes to these drills. */
  readonly bus: WakeBus | null;
  readonly playingCard: (choice: CardChoice) => PlayingCard;
  readonly limits: Pick<Config['limits'], 'rooms'>;
  readonly timing: Pick<Config['timing'], 'roomUnload'>;
}

export type Published = { readonly ok: true; readonly live: ActiveDrill } | Rejection;

export class PublishedDrills {
  readonly #ports: PublishedDrillsPorts;
  readonly #active = new Map<string, Promise<ActiveDrill | null>>();

  constructor(ports: PublishedDrillsPorts) {
    this.#ports = ports;
  }

  /** Rejects when the store cannot be reached. */
  async publish(published: PublishedEvent & { kind: 'published' }): Promise<Published> {
    await this.#unloadIdle();
    if (this.#active.size >= this.#ports.limits.rooms) return reject('too-many-rooms');
    const code = await create(PUBLISHED, [published], this.#ports, 'published');
    const live = code === null ? null : await this.find(code);
    return live === null ? reject('try-later') : { ok: true, live };
  }

  /** The drill with this code, or null. Rejects when the store cannot be reached. */
  async find(code: string): Promise<ActiveDrill | null> {
    const known = this.#active.get(code);
    const found = known ?? this.#load(code);
    if (!known) {
      this.#active.set(code, found);
      const forget = () => this.#active.delete(code);
      // A wrong code must not cost memory, and a store that failed may answer at the next try.
      found.then((live) => live ?? forget(), forget);
    }
    const live = await found;
    if (live === null) return null;
    live.usedAt = this.#ports.clock.now();
    if (!known || this.#ports.bus === null) return live;
    return (await this.#catchUp(live)) ? live : null;
  }

  /** Deletes the drill from the store. Rejects when the store cannot be reached. */
  async remove(live: ActiveDrill): Promise<void> {
    live.stop();
    await this.#ports.store.remove(live.code);
    this.#active.delete(live.code);
  }

  async close(): Promise<void> {
    const drills = await Promise.allSettled(this.#active.values());
    for (const one of drills) if (one.status === 'fulfilled') one.value?.stop();
  }

  /** False where another server has removed the drill. */
  async #catchUp(live: ActiveDrill): Promise<boolean> {
    const version = (await this.#ports.store.versions([live.code])).get(live.code);
    if (version !== undefined) await live.catchUp(version);
    else {
      this.#active.delete(live.code);
      live.stop();
    }
    return version !== undefined;
  }

  async #load(code: string): Promise<ActiveDrill | null> {
    const stored = await this.#ports.store.load(code);
    const replayed = stored && replay(PUBLISHED, stored);
    if (replayed === null) return null;
    const ports = { ...this.#ports, log: this.#ports.log.child({ drill: logTag(code) }) };
    const aggregate: PublishedAggregate = new Aggregate(PUBLISHED, code, replayed, ports);
    const live = new ActiveDrill(aggregate, ports.playingCard(aggregate.state.card), ports);
    live.analyses.ask();
    return live;
  }

  async #unloadIdle(): Promise<void> {
    const { clock, timing } = this.#ports;
    for (const [code, found] of [...this.#active]) {
      const live = await found.catch(() => null);
      if (live === null || clock.now() - live.usedAt < timing.roomUnload) continue;
      this.#active.delete(code);
      live.stop();
    }
  }
}
