// A proxy before several servers that keeps each room at one of them by its code, and takes the next where that one is gone.
import { createServer, request as forward, type IncomingMessage, type ServerResponse } from 'node:http';
import { type AddressInfo, connect, type Socket } from 'node:net';
import type { Duplex } from 'node:stream';

export interface RoomProxy {
  readonly url: string;
  /** The places among `ports` of the servers that sockets of this room were led to, one for each socket. */
  socketsOf(code: string): readonly number[];
  /** The place of the server that a room is led to while all of them run. */
  placeOf(code: string): number;
  close(): Promise<void>;
}

/** It writes the address of who asks into `X-Forwarded-For`, as the servers expect of one proxy. */
export async function proxyTo(ports: readonly number[]): Promise<RoomProxy> {
  const sockets = new Map<string, number[]>();
  const open = new Set<Duplex>();
  const placeOf = (code: string) => Buffer.from(code).reduce((sum, byte) => sum + byte, 0) % ports.length;

  /** At the room's own server, or at the next one that takes connections. */
  async function reach(code: string): Promise<{ readonly place: number; readonly wire: Socket }> {
    const first = placeOf(code);
    for (let n = 0; n < ports.length; n++) {
      const place = (first + n) % ports.length;
      const wire = await connected(ports[place]!);
      if (wire === null) continue;
      keep(wire);
      return { place, wire };
    }
    throw new Error('no server takes connections');
  }

  function keep(wire: Duplex): void {
    open.add(wire);
    wire.on('error', () => wire.destroy());
    wire.on('close', () => open.delete(wire));
  }

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { wire } = await reach(codeIn(request));
    const { method, url } = request;
    const headers = { ...request.headers, 'x-forwarded-for': request.socket.remoteAddress };
    const asked = forward({ method, path: url, headers, createConnection: () => wire }, (got) => {
      response.writeHead(got.statusCode ?? 502, got.rawHeaders);
      got.pipe(response);
    });
    asked.on('error', () => response.destroy());
    request.pipe(asked);
  }

  async function upgrade(request: IncomingMessage, near: Duplex, head: Buffer): Promise<void> {
    keep(near);
    const code = codeIn(request);
    const { place, wire } = await reach(code);
    sockets.set(code, [...(sockets.get(code) ?? []), place]);
    const { method, url, httpVersion, headers } = request;
    const lines = Object.entries({ ...headers, 'x-forwarded-for': '127.0.0.1' });
    wire.write(
      `${method} ${url} HTTP/${httpVersion}\r\n${lines.map(([name, value]) => `${name}: ${value}\r\n`).join('')}\r\n`,
    );
    wire.write(head);
    near.pipe(wire).pipe(near);
    near.on('close', () => wire.destroy());
    wire.on('close', () => near.destroy());
  }

  const server = createServer((request, response) => {
    answer(request, response).catch(() => response.destroy());
  });
  server.on('upgrade', (request, near, head) => {
    upgrade(request, near, head).catch(() => near.destroy());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}`,
    socketsOf: (code) => sockets.get(code) ?? [],
    placeOf,
    close() {
      for (const wire of open) wire.destroy();
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}

/** The code of the room that a request or a socket is about; empty where it is about none. */
function codeIn({ url = '' }: IncomingMessage): string {
  return /^\/api\/rooms\/(\w+)/.exec(url)?.[1] ?? /[?&]room=(\w+)/.exec(url)?.[1] ?? '';
}

/** Null where nothing answers. */
function connected(port: number): Promise<Socket | null> {
  return new Promise((resolve) => {
    const wire = connect(port, '127.0.0.1');
    wire.once('connect', () => resolve(wire));
    wire.once('error', () => resolve(null));
  });
}
