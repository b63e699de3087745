// Everything that rests on where the rooms are kept: the store itself, the tickets and the wake-ups between servers.
import type { Clock, Entropy, Nodes, Store, Tickets, WakeBus } from '../ports.ts';
import type { StoreAddress } from './address.ts';
import { announcing } from './announcing.ts';
import { memoryStore } from './memory.ts';
import { onlyNode } from './nodes-memory.ts';
import { postgresNodes } from './nodes-postgres.ts';
import { postgresStore } from './postgres.ts';
import { openPool } from './postgres-pool.ts';
import { postgresTickets } from './postgres-tickets.ts';
import { openSqlite } from './sqlite.ts';
import { memoryTickets } from './tickets.ts';
import { postgresWakeBus } from './wake-postgres.ts';

export type BackingChoice = { readonly kind: 'memory' } | StoreAddress;

export interface Backing {
  readonly store: Store;
  readonly tickets: Tickets;
  readonly nodes: Nodes;
  /** Null where no other server can write to these rooms. */
  readonly bus: WakeBus | null;
  /** To be called when nothing asks any more. */
  close(): Promise<void>;
}

export type OpenedBacking =
  | { readonly ok: true; readonly backing: Backing }
  /** `sentence` says what to do and holds no secret. */
  | { readonly ok: false; readonly sentence: string };

export async function openBacking(
  choice: BackingChoice,
  clock: Clock,
  entropy: Entropy,
): Promise<OpenedBacking> {
  switch (choice.kind) {
    case 'memory':
      return { ok: true, backing: inOneProcess(memoryStore(), clock, entropy) };
    case 'sqlite': {
      const opened = openSqlite(choice.location);
      return opened.ok ? { ok: true, backing: inOneProcess(opened.store, clock, entropy) } : opened;
    }
    case 'postgres': {
      const opened = await openPool(choice.url);
      if (!opened.ok) return opened;
      const bus = postgresWakeBus(choice.url);
      const store = announcing(postgresStore(opened.pool), bus);
      const nodes = postgresNodes(opened.pool, entropy);
      const close = async () => {
        await nodes.close();
        await bus.close();
        await store.close();
      };
      const tickets = postgresTickets(opened.pool, entropy);
      return { ok: true, backing: { store, tickets, nodes, bus, close } };
    }
  }
}

/** Rooms that one process serves: its tickets need to outlive nothing. */
function inOneProcess(store: Store, clock: Clock, entropy: Entropy): Backing {
  return {
    store,
    tickets: memoryTickets(clock, entropy),
    nodes: onlyNode(entropy),
    bus: null,
    close: () => store.close(),
  };
}
