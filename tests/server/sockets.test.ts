// The socket's own rules: who may open one, the first frame, broken frames, floods, and how it ends.
import { createHash } from 'node:crypto';
import { connect } from 'node:net';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { ClientMessage } from '../../shared-engine/protocol/messages.ts';
import { SOCKET_PATH } from '../../shared-engine/protocol/paths.ts';
import { CLOSE, MAX_FRAME_BYTES } from '../../shared-engine/protocol/version.ts';
import { openRoom, pass, sitDown, ticketFor, watch } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer();
});
afterEach(() => server.stop());

const hello = (ticket: string, change: object = {}): ClientMessage => ({
  kind: 'hello',
  id: 'h',
  versions: [1, 1],
  ticket,
  ...change,
});

async function seated(): Promise<Peer> {
  return sitDown(server, await openRoom(server));
}

describe('the handshake', () => {
  // RFC 6455 §1.3: the accept value of the sample key.
  const sampleKey = 'dGhlIHNhbXBsZSBub25jZQ==';
  const sampleAccept = 's3pPLMBiTxaQ9kYGzzhZRbK+xOo=';

  test('answers the sample key of RFC 6455 with the sample accept value', async () => {
    const answer = await upgrade(server, sampleKey, {});
    expect(answer).toMatch(/^HTTP\/1\.1 101 /);
    expect(answer.toLowerCase()).toContain(`sec-websocket-accept: ${sampleAccept}`.toLowerCase());
    const sum = createHash('sha1')
      .update(`${sampleKey}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`)
      .digest('base64');
    expect(sum).toBe(sampleAccept);
  });

  test('does not agree to compression', async () => {
    const answer = await upgrade(server, sampleKey, { 'Sec-WebSocket-Extensions': 'permessage-deflate' });
    expect(answer).not.toMatch(/permessage-deflate/i);
  });

  test('rejects a page of another origin before the switch of protocols', async () => {
    const answer = await upgrade(server, sampleKey, { Origin: 'https://elsewhere.example' });
    expect(answer).toMatch(/^HTTP\/1\.1 403 /);
    expect(answer).toContain('wrong-origin');
    expect(await upgrade(server, sampleKey, { Origin: server.url })).toMatch(/^HTTP\/1\.1 101 /);
  });

  test('rejects more sockets than the server can hold', async () => {
    await server.stop();
    server = await startServer({ settings: { MAX_SOCKETS: '1' } });
    const first = await Peer.open(server.url);
    await expect(Peer.open(server.url)).rejects.toThrow('503');
    await first.close();
    await expect.poll(() => Peer.open(server.url).then((peer) => peer.close(), String)).toBeUndefined();
  });
});

describe('hello', () => {
  test('is welcomed with the version both speak, then with the table', async () => {
    const { ticket } = await ticketFor(server, await openRoom(server));
    const peer = await Peer.open(server.url);
    peer.send(hello(ticket, { versions: [1, 7] }));
    await peer.untilTable(() => true);
    expect(peer.messages[0]).toEqual({ kind: 'welcome', id: 'h', version: 1 });
    expect(peer.table).toMatchObject({ you: 0, round: 0, view: null });
  });

  test('ends where no version is common', async () => {
    const { ticket } = await ticketFor(server, await openRoom(server));
    const peer = await Peer.open(server.url);
    peer.send(hello(ticket, { versions: [2, 3] }));
    expect(await peer.ended).toBe(CLOSE.versionUnknown);
  });

  test('RS6 ends with a ticket that was used, that is older than 30 seconds, or that nobody issued', async () => {
    const guest = await openRoom(server);
    const used = (await ticketFor(server, guest)).ticket;
    const isTurnedAway = async (ticket: string) => {
      const peer = await Peer.open(server.url);
      peer.send(hello(ticket));
      expect(await peer.ended).toBe(CLOSE.ticketRejected);
      expect(peer.frames).toEqual([]);
    };
    await Peer.enter(server.url, used);
    await isTurnedAway(used);
    await isTurnedAway('A'.repeat(43));
    const old = (await ticketFor(server, guest)).ticket;
    server.clock.advance(30_000);
    await isTurnedAway(old);
    const fresh = (await ticketFor(server, guest)).ticket;
    server.clock.advance(29_999);
    expect((await Peer.enter(server.url, fresh)).table.you).toBe(0);
  });

  test('must be the first frame', async () => {
    const peer = await Peer.open(server.url);
    peer.send({ kind: 'action', id: 'a', action: { kind: 'ready', ready: true } });
    expect(await peer.ended).toBe(CLOSE.helloExpected);
  });

  test('must come within ten seconds', async () => {
    const peer = await Peer.open(server.url);
    await peer.roundTrip();
    server.clock.advance(10_000);
    expect(await peer.ended).toBe(CLOSE.helloExpected);
  });

  test('is not said twice', async () => {
    const peer = await seated();
    const answer = peer.answerTo('h');
    peer.send(hello('x'));
    expect(await answer).toMatchObject({ kind: 'rejected', code: 'bad-frame' });
  });

  test('may be followed by a command without waiting for the welcome', async () => {
    const { ticket } = await ticketFor(server, await openRoom(server));
    const peer = await Peer.open(server.url);
    const answer = peer.answerTo('now');
    peer.send(hello(ticket));
    peer.send({ kind: 'action', id: 'now', action: { kind: 'ready', ready: false } });
    expect(await answer).toMatchObject({ kind: 'ack' });
  });
});

describe('E1 DL4 a broken frame is rejected and the socket stays open', () => {
  const text = (value: unknown) => JSON.stringify(value);
  const deep = `${'['.repeat(40)}${']'.repeat(40)}`;
  const broken: readonly [string, string | Uint8Array, string | null][] = [
    ['not JSON', '{"kind":', null],
    ['broken UTF-8', Uint8Array.of(0x22, 0xc3, 0x28, 0x22), null],
    ['a lone surrogate as bytes', Uint8Array.of(0x22, 0xed, 0xa0, 0x80, 0x22), null],
    ['deeper than any message', deep, null],
    ['a bare number', '7', null],
    ['an unknown kind', text({ kind: 'cheat', id: 'x1' }), 'x1'],
    ['a field too many', text({ kind: 'action', id: 'x2', act: { kind: 'leave' }, seed: 1 }), 'x2'],
    [
      'a poisoned field',
      '{"kind":"action","id":"x3","action":{"kind":"leave"},"__proto__":{"seat":1}}',
      'x3',
    ],
    ['an unknown tile', text(choice({ tiles: ['bam-0', 'bam-1', 'bam-2'] })), 'x4'],
    ['fifteen tiles', text(choice({ tiles: new Array(15).fill('bam-1') })), 'x4'],
    ['an id that is too long', text({ kind: 'action', id: 'x'.repeat(37), act: { kind: 'leave' } }), null],
  ];

  test.each(broken)('%s', async (_, frame, id) => {
    const peer = await seated();
    const answer = peer.answerTo(id);
    peer.sendRaw(frame);
    expect(await answer).toMatchObject({ kind: 'rejected', id, code: 'bad-frame' });
    expect(await peer.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
  });

  test('a binary frame', async () => {
    const peer = await seated();
    const answer = peer.answerTo(null);
    peer.sendRaw(Buffer.from(text({ kind: 'action', id: 'x', act: { kind: 'leave' } })), true);
    expect(await answer).toMatchObject({ code: 'bad-frame' });
  });

  function choice(change: object): object {
    return {
      kind: 'choose',
      id: 'x4',
      round: 1,
      seat: 0,
      choice: { kind: 'pass', step: 'first-right', tiles: [], blind: 0, ...change },
    };
  }
});

describe('a frame', () => {
  test('of more than 4 KiB ends the socket with the code of RFC 6455 §7.4.1 for it', async () => {
    const peer = await seated();
    peer.sendRaw('x'.repeat(MAX_FRAME_BYTES + 1));
    expect(await peer.ended).toBe(1009);
  });

  test('of 4 KiB is read', async () => {
    const peer = await seated();
    const answer = peer.answerTo(null);
    peer.sendRaw('x'.repeat(MAX_FRAME_BYTES));
    expect(await answer).toMatchObject({ code: 'bad-frame' });
  });

  test('over the limit of 40 at once is rejected, and a flood ends the socket', async () => {
    const peer = await seated();
    // The hello was the first of the forty.
    for (let n = 0; n < 44; n++)
      peer.send({ kind: 'action', id: `n${n}`, action: { kind: 'ready', ready: false } });
    const acks = () => peer.messages.filter(({ kind }) => kind === 'ack').length;
    await peer.until('every answer', () => acks() + rejections(peer).length === 44);
    expect(acks()).toBe(39);
    expect(rejections(peer)[0]).toMatchObject({ id: null, code: 'too-fast' });
    for (let n = 0; n < 100; n++) peer.sendRaw('more');
    expect(await peer.ended).toBe(CLOSE.tooManyFrames);
  });

  test('is answered again after a second of peace', async () => {
    const peer = await seated();
    for (let n = 0; n < 60; n++)
      peer.send({ kind: 'action', id: `n${n}`, action: { kind: 'ready', ready: false } });
    await peer.roundTrip();
    expect(rejections(peer)).toHaveLength(21);
    await pass(server, 1000, [peer]);
    expect(await peer.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
  });
});

describe('a socket', () => {
  test('DL6 whose other end has fallen silent is cut', async () => {
    const host = await openRoom(server);
    const peer = await sitDown(server, host);
    const other = await watch(server, host.code);
    peer.socket.pause();
    for (let beat = 0; beat < 3; beat++) {
      server.clock.advance(20_000);
      await other.roundTrip();
    }
    const table = await other.untilTable(({ seats }) => seats[0].kind === 'person' && !seats[0].present);
    expect(table.seats[0]).toMatchObject({ present: false });
  });

  test('DL6 that answers the heartbeat stays', async () => {
    const peer = await seated();
    await pass(server, 120_000, [peer]);
    expect(await peer.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
  });

  test('ends with `restarting` when the server closes', async () => {
    const peers = [await seated(), await seated()];
    await server.stop();
    expect(await Promise.all(peers.map((peer) => peer.ended))).toEqual([CLOSE.restarting, CLOSE.restarting]);
  });
});

function rejections(peer: Peer) {
  return peer.messages.filter(({ kind }) => kind === 'rejected');
}

/** The head of the server's answer to a hand-made upgrade. */
function upgrade(to: TestServer, key: string, more: Readonly<Record<string, string>>): Promise<string> {
  const { hostname, port, host } = new URL(to.url);
  const headers = { Host: host, Connection: 'Upgrade', Upgrade: 'websocket', 'Sec-WebSocket-Version': '13' };
  const lines = Object.entries({ ...headers, 'Sec-WebSocket-Key': key, ...more });
  return new Promise((resolve, reject) => {
    const socket = connect(Number(port), hostname, () => {
      const head = lines.map(([name, value]) => `${name}: ${value}\r\n`).join('');
      socket.write(`GET ${SOCKET_PATH} HTTP/1.1\r\n${head}\r\n`);
    });
    socket.once('data', (data) => {
      socket.destroy();
      resolve(data.toString());
    });
    socket.once('error', reject);
  });
}
