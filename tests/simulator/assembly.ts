// The seams at which the simulation puts the product together: where a planted bug goes in, and nowhere else.
import type { Bots, Nodes, Store, Tickets, WakeBus } from '../../server/ports.ts';
import type { Line } from '../../server/room/table.ts';
import type { Seat } from '../../shared-engine/index.ts';
import type { Resident } from './simulated-player.ts';

export interface Assembly {
  /** The place of all rooms, the same for all servers. */
  readonly place?: (rooms: Store) => Store;
  /** One server's way to it. */
  readonly store?: (store: Store) => Store;
  readonly tickets?: (tickets: Tickets) => Tickets;
  readonly bus?: (bus: WakeBus) => WakeBus;
  readonly nodes?: (nodes: Nodes) => Nodes;
  readonly bots?: Bots;
  /** Whose review is made where this seat's is asked for. */
  readonly reviewed?: (seat: Seat) => Seat;
  /** What a server sends to this person. */
  readonly line?: (line: Line, owner: Resident['owner']) => Line;
}

/** As the product is put together. */
export const sound: Assembly = {};
