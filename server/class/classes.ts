// All classes of this server: opened, found by code, activated from the store, unloaded when nobody asks.

import { ActiveLogs } from '../aggregate/active-logs.ts';
import { Aggregate, type AggregatePorts } from '../aggregate/aggregate.ts';
import { create } from '../aggregate/create.ts';
import { type Rejection, reject } from '../aggregate/decision.ts';
import { replay } from '../aggregate/replay.ts';
import type { Config } from '../config.ts';
import type { CardChoice, Entropy, PlayingCard, Store, Unsubscribe, WakeBus } from '../ports.ts';
import { followOthers } from '../registry/replication.ts';
import { logTag } from '../secrets.ts';
import { ActiveClass, type ClassPorts } from './active-class.ts';
import { CLASS, type ClassAggregate } from './class.ts';
import type { ClassEvent } from './event.ts';

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
  readonly #active: ActiveLogs<ActiveClass>;
  readonly #unfollow: Unsubscribe;

  constructor(ports: ClassesPorts) {
    this.#ports = ports;
    this.#active = new ActiveLogs(ports, (code) => this.#load(code));
    this.#unfollow = ports.bus ? this.#follow(ports.bus) : () => {};
  }

  /** Rejects when the store cannot be reached. */
  async open(opened: ClassEvent & { kind: 'opened' }): Promise<ClassOpened> {
    if (!(await this.#active.hasRoom())) return reject('too-many-rooms');
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
  find(code: string): Promise<ActiveClass | null> {
    return this.#active.find(code);
  }

  /** Deletes the class and its tables from the store. Rejects when the store cannot be reached. */
  async remove(live: ActiveClass): Promise<void> {
    await live.delete();
    this.#active.forget(live.code);
  }

  /** Answers every request that waits for a change. */
  async close(): Promise<void> {
    this.#unfollow();
    await this.#active.close();
  }

  #follow(bus: WakeBus): Unsubscribe {
    const following = {
      active: this.#active.loaded,
      logOf: (live: ActiveClass) => live,
      removed: (live: ActiveClass) => {
        this.#active.forget(live.code);
        live.stop();
      },
    };
    return followOthers(following, { ...this.#ports, bus });
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
}
