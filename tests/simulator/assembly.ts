// The points where the simulation assembles the product; a seeded bug replaces a part at one of them.

import type { Connection } from '../../server/delivery/broadcaster.ts';
import type { Nodes, Store, Tickets, WakeBus } from '../../server/ports.ts';
import type { Bots } from '../../server/work-ports.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { SimulatedPlayer } from './simulated-player.ts';

export interface Assembly {
  /** The store that all servers share. */
  readonly sharedStore?: (rooms: Store) => Store;
  /** One server's access to the shared store. */
  readonly store?: (store: Store) => Store;
  readonly tickets?: (tickets: Tickets) => Tickets;
  readonly bus?: (bus: WakeBus) => WakeBus;
  readonly nodes?: (nodes: Nodes) => Nodes;
  readonly bots?: Bots;
  /** The seat whose review is made when this seat asks for its own. */
  readonly reviewedSeat?: (seat: Seat) => Seat;
  /** The server's end of this person's connection. */
  readonly connection?: (line: Connection, owner: SimulatedPlayer['holder']) => Connection;
}

/** The product without a seeded bug. */
export const asShipped: Assembly = {};
