// All published drills of this server: published, found by code, loaded from the store, unloaded when nobody asks.

import { ActiveLogs } from '../aggregate/active-logs.ts';
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
  readonly #active: ActiveLogs<ActiveDrill>;

  constructor(ports: PublishedDrillsPorts) {
    this.#ports = ports;
    this.#active = new ActiveLogs(ports, (code) => this.#load(code));
  }

  /** Rejects when the store cannot be reached. */
  async publish(published: PublishedEvent & { kind: 'published' }): Promise<Published> {
    if (!(await this.#active.hasRoom())) return reject('too-many-rooms');
    const code = await create(PUBLISHED, [published], this.#ports, 'published');
    const live = code === null ? null : await this.find(code);
    return live === null ? reject('try-later') : { ok: true, live };
  }

  /** The drill with this code, or null. Rejects when the store cannot be reached. */
  find(code: string): Promise<ActiveDrill | null> {
    return this.#active.find(code);
  }

  /** Deletes the drill from the store. Rejects when the store cannot be reached. */
  async remove(live: ActiveDrill): Promise<void> {
    live.stop();
    await this.#ports.store.remove(live.code);
    this.#active.forget(live.code);
  }

  close(): Promise<void> {
    return this.#active.close();
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
}
