// Bytes that no HTTP client would send, at the port of the server.
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
