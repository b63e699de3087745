// The tables of a class: rooms of this server, followed for as long as the class is active.
import type { Round } from '../../shared-engine/index.ts';
import type { Store, Unsubscribe } from '../ports.ts';
import type { ActiveRoom } from '../registry/active-room.ts';
import type { Registry } from '../registry/registry.ts';
import type { RoomChange } from '../room/room.ts';
import { closedRounds } from './closed-rounds.ts';

export interface ClassTable {
  readonly live: ActiveRoom;
  /** The rounds closed here, by number. */
  readonly closed: Map<number, Round>;
  readonly unsubscribe: Unsubscribe;
}

export interface TablesPorts {
  readonly registry: Registry;
  readonly store: Pick<Store, 'history'>;
  /** Called when this happened at this table. */
  readonly onChange: (code: string, recorded: RoomChange['recorded']) => void;
}

export class Tables {
  readonly #ports: TablesPorts;
  readonly #known = new Map<string, ClassTable>();

  constructor(ports: TablesPorts) {
    this.#ports = ports;
  }

  /** The table as it was last found; undefined before that. */
  at(code: string): ClassTable | undefined {
    return this.#known.get(code);
  }

  /** Looks the room up, for it may have been unloaded meanwhile; rejects when the store cannot be reached. */
  async find(code: string): Promise<ClassTable | null> {
    const { registry, store, onChange } = this.#ports;
    const live = await registry.find(code);
    const known = this.#known.get(code);
    if (live === null || known?.live === live) return live && known ? known : null;
    const log = await store.history(code);
    const again = this.#known.get(code);
    if (again?.live === live) return again;
    again?.unsubscribe();
    const closed = closedRounds(log ?? { rows: [] });
    const unsubscribe = live.room.onChange(({ state: { play }, recorded }) => {
      if (play?.round.phase === 'closed') closed.set(play.number, play.round);
      onChange(code, recorded);
    });
    const table = { live, closed, unsubscribe };
    this.#known.set(code, table);
    return table;
  }

  /** Ends the subscription to every table. */
  close(): void {
    for (const { unsubscribe } of this.#known.values()) unsubscribe();
    this.#known.clear();
  }
}
