// The door for sockets: whom it lets in, and the session that each of them gets.
import type { FastifyInstance } from 'fastify';
import { SOCKET_PATH } from '../../shared-engine/index.ts';
import { refuseWith } from '../http/refusals.ts';
import { errorFacts, type Log } from '../log.ts';
import { lineOf } from './line.ts';
import { Session, type SessionPorts } from './session.ts';

export interface GatewayPorts extends SessionPorts {
  readonly log: Log;
  readonly mostSockets: number;
}

export function gateway(app: FastifyInstance, ports: GatewayPorts): void {
  const { clock, log, mostSockets } = ports;

  app.get(
    SOCKET_PATH,
    {
      websocket: true,
      preValidation: async (_, reply) => {
        if (app.websocketServer.clients.size >= mostSockets) return refuseWith(reply, 'try-later');
      },
    },
    (socket) => {
      const session = new Session(lineOf(socket, clock), ports);
      socket.on('message', (data, isBinary) => {
        const bytes = Array.isArray(data) ? Buffer.concat(data) : new Uint8Array(data);
        session.receive(bytes, isBinary).catch((error: unknown) => {
          log.error(errorFacts(error), 'a frame failed');
          socket.terminate();
        });
      });
      socket.on('close', () => session.closed());
    },
  );
}
