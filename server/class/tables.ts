// The tables of a class: rooms of this server, followed for as long as the class is at work.
import type { Round } from '../../shared-engine/index.ts';
import type { Store, Undo } from '../ports.ts';
import type { LiveRoom } from '../room/live.ts';
import type { Registry } from '../room/registry.ts';
import { closedRounds } from './past-rounds.ts';

export interface ClassTable {
  readonly live: LiveRoom;
  /** The rounds closed here, by number. */
  readonly closed: Map<number, Round>;
  readonly unfollow: Undo;
}

export interface TablesPorts {
  readonly registry: Registry;
  readonly store: Store;
  /** Something happened at this table. */
  readonly onChange: (code: string) => void;
}

export class Tables {
  readonly #ports: TablesPorts;
  readonly #known = new Map<string, ClassTable>();

  constructor(ports: TablesPorts) {
    this.#ports = ports;
  }

  /** The table as it was last met; undefined before that. */
  at(code: string): ClassTable | undefined {
    return this.#known.get(code);
  }

  /** Looks the room up, for it may have been put down meanwhile; rejects when the store is away. */
  async meet(code: string): Promise<ClassTable | null> {
    const { registry, store, onChange } = this.#ports;
    const live = await registry.find(code);
    const known = this.#known.get(code);
    if (live === null || known?.live === live) return live && known ? known : null;
    const log = await store.load(code);
    const again = this.#known.get(code);
    if (again?.live === live) return again;
    again?.unfollow();
    const closed = closedRounds(log ?? []);
    const unfollow = live.room.onChange(({ play }) => {
      if (play?.round.phase === 'closed') closed.set(play.number, play.round);
      onChange(code);
    });
    const table = { live, closed, unfollow };
    this.#known.set(code, table);
    return table;
  }

  leave(): void {
    for (const { unfollow } of this.#known.values()) unfollow();
    this.#known.clear();
  }
}
