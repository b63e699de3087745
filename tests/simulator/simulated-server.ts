// One server of the simulation: the product's own rooms and sessions with simulated clock, store and network.
import { Committer } from '../../server/aggregate/committer.ts';
import type { Connection } from '../../server/delivery/broadcaster.ts';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/playing-card.ts';
import type { Clock, Entropy, Nodes, Store, Tickets, WakeBus } from '../../server/ports.ts';
import { Registry } from '../../server/registry/registry.ts';
import { FRIENDS_TABLE } from '../../server/room/policy.ts';
import type { RoomState } from '../../server/room/state.ts';
import type { Bots, Reviewer } from '../../server/work-ports.ts';
import { botsWithFallback } from '../../server/workers/bots-with-fallback.ts';
import { Session } from '../../server/ws/session.ts';
import { settings } from '../kit/server.ts';
import type { ServerEnd } from './simulated-connection.ts';

export interface ServerPorts {
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly store: Store;
  readonly bus: WakeBus;
  readonly nodes: Nodes;
  readonly tickets: Tickets;
  readonly bots: Bots;
  readonly reviewer: Reviewer;
}

/** How long somebody may be away before a bot chooses. */
export const ABSENT_MS = 10_000;

const { timing, limits } = settings({
  BOT_DELAY_MS: '400',
  DISCONNECT_GRACE_MS: String(ABSENT_MS),
  NEXT_DEAL_GRACE_MS: '4000',
});
const log = createLog('silent');

export class SimulatedServer {
  readonly registry: Registry;
  readonly #ports: ServerPorts;

  constructor(ports: ServerPorts) {
    this.#ports = ports;
    const bots = botsWithFallback(ports.bots, ports.clock, log);
    this.registry = new Registry({
      ...ports,
      bots,
      log,
      timing,
      limits,
      playingCard,
      committer: new Committer(ports.store),
      policies: { alone: FRIENDS_TABLE, friends: FRIENDS_TABLE, class: FRIENDS_TABLE },
      analyzer: null,
      metrics: null,
      shared: { reviewer: ports.reviewer, analyzer: null },
    });
  }

  /** The server's end of a new socket. */
  connect(connection: Connection): ServerEnd {
    const { tickets, clock } = this.#ports;
    const { registry } = this;
    const session = new Session(connection, { registry, tickets, clock, perSecond: 20, log, metrics: null });
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
