// One server in the simulation: the product's own rooms and sessions on a simulated machine.

import { createLog } from '../../server/log.ts';
import type { Bots, Clock, Entropy, Nodes, Reviewer, Store, Tickets, WakeBus } from '../../server/ports.ts';
import { Registry } from '../../server/room/registry.ts';
import type { RoomState } from '../../server/room/state.ts';
import type { Line } from '../../server/room/table.ts';
import { sturdyBots } from '../../server/work/sturdy-bots.ts';
import { Session } from '../../server/ws/session.ts';
import { settings } from '../kit/server.ts';
import type { FarEnd } from './simulated-connection.ts';

export interface NodePorts {
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly store: Store;
  readonly bus: WakeBus;
  readonly nodes: Nodes;
  readonly tickets: Tickets;
  readonly bots: Bots;
  readonly reviewer: Reviewer;
}

const { pace, limits } = settings({ THINK_MS: '400', AWAY_MS: '10000', DEAL_WAIT_MS: '4000' });
const log = createLog('silent');

export class SimulatedNode {
  readonly registry: Registry;
  readonly #ports: NodePorts;

  constructor(ports: NodePorts) {
    this.#ports = ports;
    const bots = sturdyBots(ports.bots, ports.clock, log);
    this.registry = new Registry({ ...ports, bots, log, pace, limits });
  }

  /** The server's end of a new socket. */
  connect(line: Line): FarEnd {
    const { tickets, clock } = this.#ports;
    const session = new Session(line, { registry: this.registry, tickets, clock, perSecond: 20 });
    return {
      receive: (frame) => void session.receive(frame, false),
      closed: () => session.closed(),
    };
  }

  /** The room as this server has it, where it has it. */
  async stateOf(code: string): Promise<RoomState | null> {
    return (await this.registry.find(code))?.room.state ?? null;
  }
}
