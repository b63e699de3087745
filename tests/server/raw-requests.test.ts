// Bytes that no HTTP client would send, at the port of the server.
import { once } from 'node:events';
import { connect } from 'node:net';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SOCKET_PATH } from '../../shared-engine/protocol/paths.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'raw requests' });
});
afterAll(() => server.stop());

describe('raw bytes at the port', () => {
  test('that smuggle a second request behind a length and a chunk are rejected', async () => {
    const answer = await raw(
      'POST /api/rooms HTTP/1.1\r\nHost: x\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET /healthz HTTP/1.1\r\nHost: x\r\n\r\n',
    );
    expect(answer).toMatch(/^HTTP\/1\.1 400 /);
    expect(answer).not.toContain('"ok":true');
  });

  test('with a broken header, an endless one or none at all do not stop the server', async () => {
    expect(await raw('GET / HTTP/1.1\r\nHost: x\r\nA\u0000: b\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 /);
    expect(await raw(`GET / HTTP/1.1\r\nHost: x\r\nA: ${'b'.repeat(40_000)}\r\n\r\n`)).toMatch(
      /^HTTP\/1\.1 4/,
    );
    expect(await raw('\u0000\u0001\u0002\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 |^$/);
    expect((await request(server.url).get('/healthz')).status).toBe(200);
  });

  test('of an upgrade with two origins, or with a foreign host for its own, are rejected', async () => {
    const upgrade = (lines: string) =>
      raw(
        `GET ${SOCKET_PATH} HTTP/1.1\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n${lines}\r\n\r\n`,
      );
    const { host } = new URL(server.url);
    const foreign = 'Origin: https://elsewhere.example';
    expect(await upgrade(`Host: ${host}\r\n${foreign}`)).toMatch(/^HTTP\/1\.1 403 /);
    expect(await upgrade(`Host: ${host}\r\n${foreign}\r\nOrigin: http://${host}`)).not.toMatch(/ 101 /);
    expect(await upgrade(`Host: ${host}\r\nOrigin: http://${host}.elsewhere.example`)).toMatch(/ 403 /);
    expect(await upgrade(`Host: ${host}\r\nOrigin: http://${host}`)).toMatch(/^HTTP\/1\.1 101 /);
  });

  test('LM6 that stop in the middle of a head or a body are cut off, and nobody else waits for them', async () => {
    const { server: http } = server.app;
    expect([http.headersTimeout, http.requestTimeout]).toEqual([10_000, 30_000]);
    // The times that ship would make this test wait.
    [http.headersTimeout, http.requestTimeout] = [100, 200];
    const head = raw('GET /healthz HTTP/1.1\r\nHost: x\r\nA: ');
    const body = raw('POST /api/rooms HTTP/1.1\r\nHost: x\r\nContent-Length: 500\r\n\r\n{"name":');
    expect((await request(server.url).get('/healthz')).status).toBe(200);
    expect((await Promise.all([head, body])).map((answer) => answer.slice(0, 10))).toEqual([
      'HTTP/1.1 4',
      'HTTP/1.1 4',
    ]);
  });

  test('LM6 of more connections than there may be are dropped, and pages still load when every socket is taken', async () => {
    const few = await startServer({ seed: 'few', settings: { MAX_SOCKETS: '5' } });
    expect(few.app.server.maxConnections).toBe(1005);
    few.app.server.maxConnections = 3;
    const { hostname, port } = new URL(few.url);
    const idle = Array.from({ length: 3 }, () => connect(Number(port), hostname));
    await Promise.all(idle.map((socket) => once(socket, 'connect')));
    await expect.poll(() => connectionsOf(few)).toBe(3);
    const dropped = connect(Number(port), hostname);
    dropped.on('error', () => {});
    await once(dropped, 'close');
    for (const socket of idle) socket.destroy();
    await expect.poll(() => connectionsOf(few)).toBe(0);
    expect((await request(few.url).get('/healthz')).status).toBe(200);
    await few.stop();
  });

  function connectionsOf({ app }: TestServer): Promise<number> {
    return new Promise((resolve, reject) =>
      app.server.getConnections((error, count) => (error ? reject(error) : resolve(count))),
    );
  }

  function raw(text: string): Promise<string> {
    const { hostname, port } = new URL(server.url);
    return new Promise((resolve) => {
      const socket = connect(Number(port), hostname, () => socket.write(text));
      let heard = '';
      const done = () => {
        socket.destroy();
        resolve(heard);
      };
      socket.on('data', (data) => {
        heard += data.toString();
        done();
      });
      socket.on('error', done);
      socket.on('close', done);
    });
  }
});
