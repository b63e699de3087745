// Takes sockets in, as many as the limits allow, and gives each of them a session.
import type { WebSocket } from '@fastify/websocket';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { CLOSE, RETRY_SPREAD_MS, SOCKET_PATH } from '../../shared-engine/index.ts';
import type { Connection } from '../delivery/broadcaster.ts';
import { addressKey } from '../http/address-key.ts';
import { rejectWith } from '../http/rejections.ts';
import { errorFacts } from '../log.ts';
import type { Entropy } from '../ports.ts';
import { connectionOf } from './connection.ts';
import { Session, type SessionPorts } from './session.ts';

export interface GatewayPorts extends SessionPorts {
  readonly maxSockets: number;
  /** 0 for no limit. */
  readonly maxPerIp: number;
}

export class Gateway {
  readonly #ports: GatewayPorts;
  readonly #connections = new Set<Connection>();
  readonly #perIp = new Map<string, number>();
  /** Sockets since the start: their numbers in the log. */
  #opened = 0;

  constructor(ports: GatewayPorts) {
    this.#ports = ports;
  }

  /** Answers at the socket's path. */
  listen(app: FastifyInstance): void {
    app.route({
      method: 'GET',
      url: SOCKET_PATH,
      preValidation: async ({ ip }, reply) => {
        if (!this.#isWithinLimits(addressKey(ip))) return rejectWith(reply, 'try-later');
      },
      // A request that is no handshake.
      handler: (_, reply) => rejectWith(reply, 'bad-request'),
      wsHandler: (socket, request) => this.#accept(socket, request),
    });
  }

  get sockets(): number {
    return this.#connections.size;
  }

  /** Ends every socket and says to each when to come back. */
  restart(entropy: Entropy): void {
    for (const connection of this.#connections) {
      const [high, low] = entropy.bytes(2);
      const wait = Math.floor(((high! * 256 + low!) / 65_536) * RETRY_SPREAD_MS);
      connection.end(CLOSE.restarting, String(wait));
    }
  }

  #isWithinLimits(address: string): boolean {
    const { maxSockets, maxPerIp } = this.#ports;
    if (this.#connections.size >= maxSockets) return false;
    return maxPerIp === 0 || (this.#perIp.get(address) ?? 0) < maxPerIp;
  }

  #count(address: string, change: 1 | -1): void {
    const now = (this.#perIp.get(address) ?? 0) + change;
    if (now > 0) this.#perIp.set(address, now);
    else this.#perIp.delete(address);
  }

  /** `id` is that of the request that became the socket. */
  #accept(socket: WebSocket, { ip, id }: Pick<FastifyRequest, 'ip' | 'id'>): void {
    const address = addressKey(ip);
    const log = this.#ports.log.child({ request: id, connection: ++this.#opened });
    log.info({}, 'connection opened');
    this.#count(address, 1);
    const connection = connectionOf(socket, this.#ports.clock);
    const session = new Session(connection, { ...this.#ports, log });
    this.#connections.add(connection);
    socket.on('message', (data, isBinary) => {
      session.receive(bytesOf(data), isBinary).catch((error: unknown) => {
        log.error(errorFacts(error), 'a frame failed');
        socket.terminate();
      });
    });
    socket.on('close', (code) => {
      log.info({ code }, 'connection closed');
      this.#connections.delete(connection);
      this.#count(address, -1);
      session.closed();
    });
  }
}

/** Of a frame in one piece as it came, without a copy: nobody else writes there. */
function bytesOf(data: Buffer | ArrayBuffer | readonly Buffer[]): Uint8Array {
  if (data instanceof ArrayBuffer) return new Uint8Array(data);
  return data instanceof Uint8Array ? data : Buffer.concat(data);
}
