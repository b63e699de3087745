// All club's pages of this server: made, found by code, loaded from the store, unloaded when nobody asks.
import { ActiveLogs } from '../aggregate/active-logs.ts';
import { Aggregate, type AggregatePorts } from '../aggregate/aggregate.ts';
import { create } from '../aggregate/create.ts';
import { type Answer, type Rejection, reject } from '../aggregate/decision.ts';
import { replay } from '../aggregate/replay.ts';
import type { Config } from '../config.ts';
import type { Log } from '../log.ts';
import type { Entropy, Store, WakeBus } from '../ports.ts';
import { logTag } from '../secrets.ts';
import type { ClubCommand } from './decide.ts';
import type { ClubState } from './state.ts';
import { CLUB, type ClubAggregate } from './stored-event.ts';

export interface ClubsPorts extends AggregatePorts {
  readonly store: Pick<Store, 'create' | 'load' | 'loadAfter' | 'versions' | 'remove'>;
  readonly log: Log;
  readonly entropy: Entropy;
  /** Null where no other server writes to these pages. */
  readonly bus: WakeBus | null;
  readonly limits: Pick<Config['limits'], 'rooms'>;
  readonly timing: Pick<Config['timing'], 'roomUnload'>;
}

export type Made = { readonly ok: true; readonly live: ActiveClub } | Rejection;

/** The page of a club, as this process has it. */
export class ActiveClub {
  readonly code: string;
  readonly #aggregate: ClubAggregate;
  readonly stop: () => void;
  /** When the page was last asked for, by the clock of this server. */
  usedAt = 0;

  /** Follows the page until `stop`. */
  constructor(aggregate: ClubAggregate, log: Log) {
    this.code = aggregate.code;
    this.#aggregate = aggregate;
    this.stop = aggregate.onChange(({ recorded }) => {
      for (const { seq, event } of recorded) log.info({ seq, event: event.kind }, 'club event');
    });
  }

  get state(): ClubState {
    return this.#aggregate.state;
  }

  submit(command: ClubCommand): Promise<Answer> {
    return this.#aggregate.submit(command);
  }

  /** Rejects when the store cannot be reached. */
  catchUp(version: number): Promise<void> {
    return this.#aggregate.catchUp(version);
  }
}

export class Clubs {
  readonly #ports: ClubsPorts;
  readonly #active: ActiveLogs<ActiveClub>;

  constructor(ports: ClubsPorts) {
    this.#ports = ports;
    this.#active = new ActiveLogs(ports, (code) => this.#load(code));
  }

  /** Rejects when the store cannot be reached. */
  async make(made: Pick<ClubState, 'name' | 'secretHash'>): Promise<Made> {
    if (!(await this.#active.hasRoom())) return reject('too-many-rooms');
    const code = await create(CLUB, [{ kind: 'club-made', ...made }], this.#ports, 'club');
    const live = code === null ? null : await this.find(code);
    return live === null ? reject('try-later') : { ok: true, live };
  }

  /** The page with this code, or null. Rejects when the store cannot be reached. */
  find(code: string): Promise<ActiveClub | null> {
    return this.#active.find(code);
  }

  /** Deletes the page from the store. Rejects when the store cannot be reached. */
  async remove(live: ActiveClub): Promise<void> {
    live.stop();
    await this.#ports.store.remove(live.code);
    this.#active.forget(live.code);
  }

  close(): Promise<void> {
    return this.#active.close();
  }

  async #load(code: string): Promise<ActiveClub | null> {
    const stored = await this.#ports.store.load(code);
    const replayed = stored && replay(CLUB, stored);
    if (replayed === null) return null;
    const log = this.#ports.log.child({ club: logTag(code) });
    return new ActiveClub(new Aggregate(CLUB, code, replayed, { ...this.#ports, log }), log);
  }
}
