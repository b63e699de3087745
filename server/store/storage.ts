// Everything that depends on where rooms are stored: the store itself, tickets, nodes, wake-ups between servers.
import type { Clock, Entropy, Nodes, Store, Tickets, WakeBus } from '../ports.ts';
import type { StoreAddress } from './address.ts';
import { memoryStore } from './memory.ts';
import { onlyNode } from './nodes-memory.ts';
import { postgresNodes } from './nodes-postgres.ts';
import { postgresStore } from './postgres.ts';
import { openPool } from './postgres-pool.ts';
import { postgresTickets } from './postgres-tickets.ts';
import { publishingStore } from './publishing-store.ts';
import { openSqlite } from './sqlite.ts';
import { memoryTickets } from './tickets.ts';
import { postgresWakeBus } from './wake-postgres.ts';

export type StorageChoice = { readonly kind: 'memory' } | StoreAddress;

export interface Storage {
  readonly store: Store;
  readonly tickets: Tickets;
  readonly nodes: Nodes;
  /** Null where no other server can write to this store. */
  readonly bus: WakeBus | null;
  /** To be called when nothing uses them any more. */
  close(): Promise<void>;
}

export type OpenedStorage =
  | { readonly ok: true; readonly storage: Storage }
  /** `message` says what to do and holds no secret. */
  | { readonly ok: false; readonly message: string };

export async function openStorage(
  choice: StorageChoice,
  clock: Clock,
  entropy: Entropy,
): Promise<OpenedStorage> {
  switch (choice.kind) {
    case 'memory':
      return { ok: true, storage: inOneProcess(memoryStore(), clock, entropy) };
    case 'sqlite': {
      const opened = openSqlite(choice.location);
      return opened.ok ? { ok: true, storage: inOneProcess(opened.store, clock, entropy) } : opened;
    }
    case 'postgres': {
      const opened = await openPool(choice.url);
      if (!opened.ok) return opened;
      const bus = postgresWakeBus(choice.url, clock);
      const store = publishingStore(postgresStore(opened.pool), bus);
      const nodes = postgresNodes(opened.pool, entropy);
      const close = async () => {
        await nodes.close();
        await bus.close();
        await store.close();
      };
      const tickets = postgresTickets(opened.pool, entropy);
      return { ok: true, storage: { store, tickets, nodes, bus, close } };
    }
  }
}

/** For a store that one process uses: its tickets need not outlive it. */
function inOneProcess(store: Store, clock: Clock, entropy: Entropy): Storage {
  return {
    store,
    tickets: memoryTickets(clock, entropy),
    nodes: onlyNode(entropy),
    bus: null,
    close: () => store.close(),
  };
}
