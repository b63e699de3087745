// The door for sockets: whom it lets in, and the session that each of them gets.
import type { WebSocket } from '@fastify/websocket';
import type { FastifyInstance } from 'fastify';
import { CLOSE, RETRY_SPREAD_MS, SOCKET_PATH } from '../../shared-engine/index.ts';
import { refuseWith } from '../http/refusals.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Entropy } from '../ports.ts';
import type { Line } from '../room/table.ts';
import { lineOf } from './line.ts';
import { Session, type SessionPorts } from './session.ts';

export interface GatewayPorts extends SessionPorts {
  readonly log: Log;
  readonly mostSockets: number;
  /** 0 for no limit. */
  readonly mostAnAddress: number;
}

export class Gateway {
  readonly #ports: GatewayPorts;
  readonly #lines = new Set<Line>();
  readonly #byAddress = new Map<string, number>();

  constructor(ports: GatewayPorts) {
    this.#ports = ports;
  }

  /** Answers at the socket's path. */
  open(app: FastifyInstance): void {
    app.get(
      SOCKET_PATH,
      {
        websocket: true,
        preValidation: async ({ ip }, reply) => {
          if (!this.#hasRoomFor(ip)) return refuseWith(reply, 'try-later');
        },
      },
      (socket, { ip }) => this.#take(socket, ip),
    );
  }

  get sockets(): number {
    return this.#lines.size;
  }

  /** Ends every socket and says to each when to come back. */
  restart(entropy: Entropy): void {
    for (const line of this.#lines) {
      const [high, low] = entropy.bytes(2);
      const wait = Math.floor(((high! * 256 + low!) / 65_536) * RETRY_SPREAD_MS);
      line.end(CLOSE.restarting, String(wait));
    }
  }

  #hasRoomFor(address: string): boolean {
    const { mostSockets, mostAnAddress } = this.#ports;
    if (this.#lines.size >= mostSockets) return false;
    return mostAnAddress === 0 || (this.#byAddress.get(address) ?? 0) < mostAnAddress;
  }

  #count(address: string, change: 1 | -1): void {
    const now = (this.#byAddress.get(address) ?? 0) + change;
    if (now > 0) this.#byAddress.set(address, now);
    else this.#byAddress.delete(address);
  }

  #take(socket: WebSocket, address: string): void {
    const { clock, log } = this.#ports;
    this.#count(address, 1);
    const line = lineOf(socket, clock);
    const session = new Session(line, this.#ports);
    this.#lines.add(line);
    socket.on('message', (data, isBinary) => {
      const bytes = Array.isArray(data) ? Buffer.concat(data) : new Uint8Array(data);
      session.receive(bytes, isBinary).catch((error: unknown) => {
        log.error(errorFacts(error), 'a frame failed');
        socket.terminate();
      });
    });
    socket.on('close', () => {
      this.#lines.delete(line);
      this.#count(address, -1);
      session.closed();
    });
  }
}
