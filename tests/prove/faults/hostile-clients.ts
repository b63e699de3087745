// What clients may do to a server: malformed frames, floods, slow reading, everybody reconnecting at once.
import { once } from 'node:events';
import { WebSocket, WebSocketServer } from 'ws';
import { systemClock } from '../../../server/clock.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { connectionOf } from '../../../server/ws/connection.ts';
import { CLOSE } from '../../../shared-engine/protocol/version.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import { tableOfFour, watch } from '../../kit/http-client.ts';
import { storeOf } from '../../kit/logs.ts';
import { Peer } from '../../kit/sockets.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import { Crowd } from './crowd.ts';
import { malformedFrame, readMalformedFrames } from './malformed-frames.ts';
import type { ProofInput, Result, Scenario } from './scenario.ts';
import { pause, type ServerUnderTest, serverUnderTest } from './server-under-test.ts';

interface Disturbance {
  readonly happened: number;
  readonly violations: readonly string[];
  readonly note?: string;
}

/** Runs a disturbance against a server while a room plays on it. */
async function whilePlaying(
  { seed, size }: ProofInput,
  disturb: (server: ServerUnderTest, crowd: Crowd, random: Random) => Promise<Disturbance>,
): Promise<Result> {
  const { folder, discard } = await temporaryFolder();
  const server = await serverUnderTest({ DATA_DIR: folder }, size);
  try {
    await server.start();
    const crowd = await Crowd.gather({
      rooms: 1,
      urls: [server.url],
      seed,
      maxThinkingMs: 150,
      deadline: null,
    });
    const { happened, violations, note } = await disturb(server, crowd, stream(seed, 'hostile clients'));
    const store = storeOf(openSqlite(`${folder}/quadrille.db`, 'beside'));
    const verdict = await crowd.finish(store, performance.now());
    await store.close();
    return {
      happened,
      verdict: { ...verdict, violations: [...violations, ...verdict.violations] },
      ...(note && { note }),
    };
  } finally {
    await server.end('SIGKILL');
    await discard();
  }
}

export const malformed: Scenario = {
  title: 'malformed frames, bad UTF-8, deep JSON, __proto__, random bytes',
  run: (input) =>
    whilePlaying(input, async (server, crowd, random) => {
      const read = input.size === 'full' ? 100_000 : 3000;
      const violations = readMalformedFrames(read, random);
      const sockets = input.size === 'full' ? 200 : 8;
      let sent = 0;
      for (let at = 0; at < sockets; at++) {
        const peer = await Peer.open(server.url);
        for (let frame = 0; frame < 30; frame++, sent++)
          peer.sendRaw(malformedFrame(random), random.below(3) === 0);
        if (at % 2 === 0) peer.socket.terminate();
        else await Promise.race([peer.roundTrip(), peer.ended]);
        peer.socket.terminate();
      }
      const tooBig = await Peer.open(server.url);
      tooBig.sendRaw('x'.repeat(5000));
      if ((await tooBig.ended) !== CLOSE.tooBig) violations.push('a frame that is too big was taken');
      const [code] = crowd.codes;
      if ((await fetch(`${server.url}/healthz`)).status !== 200)
        violations.push(`the server of ${code} is down`);
      return { happened: read + sent, violations };
    }),
};

export const flooded: Scenario = {
  title: 'floods of frames',
  run: (input) =>
    whilePlaying(input, async (server, crowd) => {
      const floods = input.size === 'full' ? 60 : 4;
      const violations: string[] = [];
      for (let at = 0; at < floods; at++) {
        const peer = await watch(server, crowd.codes[0]!);
        for (let frame = 0; frame < 1000; frame++) peer.sendRaw('{"kind":"action"}');
        if ((await peer.ended) !== CLOSE.tooManyFrames) violations.push('a flood was not cut off');
      }
      return { happened: floods, violations };
    }),
};

export const slowReader: Scenario = {
  title: 'other players do not wait for clients that read nothing',
  run: (input) =>
    whilePlaying(input, async (server) => {
      const { code, peers } = await tableOfFour(server);
      const phase = input.size === 'full' ? 45_000 : 15_000;
      const before = await answerTimes(peers, phase / 3);
      const slow = await Promise.all([watch(server, code), watch(server, code), watch(server, code)]);
      for (const { socket } of slow) socket.pause();
      const after = await answerTimes(peers, phase);
      for (const { socket } of [...slow, ...peers]) socket.terminate();
      const [lone, crowded] = [percentile(before, 0.99), percentile(after, 0.99)];
      const violations = crowded > 2 * lone + 20 ? [`others wait ${crowded} ms instead of ${lone} ms`] : [];
      return { happened: slow.length, violations, note: `p99 ${crowded} ms beside ${lone} ms before` };
    }),
};

/** Three players say that they are ready and that they are not, as fast as they may; how long each answer took, in milliseconds. */
async function answerTimes(peers: readonly Peer[], ms: number): Promise<number[]> {
  const end = performance.now() + ms;
  const waits: number[] = [];
  await Promise.all(
    peers.slice(0, 3).map(async (peer) => {
      let ready = false;
      while (performance.now() < end) {
        const started = performance.now();
        ready = !ready;
        await peer.act({ kind: 'ready', ready });
        waits.push(performance.now() - started);
        await pause(Math.max(0, 55 - (performance.now() - started)));
      }
    }),
  );
  return waits;
}

function percentile(values: readonly number[], share: number): number {
  const ordered = [...values].sort((a, b) => a - b);
  return Math.round(ordered[Math.floor(share * (ordered.length - 1))] ?? 0);
}

export const backpressure: Scenario = {
  title: 'a connection whose client reads nothing is closed before 64 KiB and one message wait',
  async run() {
    const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false });
    await once(server, 'listening');
    const taken = new Promise<WebSocket>((resolve) => server.on('connection', resolve));
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('no port');
    const client = new WebSocket(`ws://127.0.0.1:${address.port}`);
    const [socket] = await Promise.all([taken, once(client, 'open')]);
    client.pause();
    const line = connectionOf(socket, systemClock);
    const message = { kind: 'rejected', id: null, code: 'bad-frame', message: 'x'.repeat(4000) } as const;
    let most = 0;
    let sent = 0;
    for (; socket.readyState === WebSocket.OPEN && sent < 100_000; sent++) {
      line.send(message);
      most = Math.max(most, socket.bufferedAmount);
      if (sent % 16 === 0) await pause(0);
    }
    const violations = most > 64 * 1024 + 4200 ? [`${most} bytes waited`] : [];
    if (socket.readyState === WebSocket.OPEN) violations.push('the connection was never closed');
    client.terminate();
    socket.terminate();
    server.close();
    return {
      happened: 1,
      verdict: { violations },
      note: `${most} bytes waited at most, after ${sent} messages`,
    };
  },
};

export const reconnectStorm: Scenario = {
  title: 'everybody comes back at once after a kill',
  async run({ seed, size }) {
    const { folder, discard } = await temporaryFolder();
    const server = await serverUnderTest({ DATA_DIR: folder, MAX_SOCKETS: '20000' }, size);
    try {
      await server.start();
      const rooms = size === 'full' ? 500 : 12;
      const crowd = await Crowd.gather({
        rooms,
        urls: [server.url],
        seed,
        maxThinkingMs: 3_600_000,
        deadline: null,
      });
      await server.end('SIGKILL');
      await server.start();
      const up = performance.now();
      const open = await crowd.until(() => crowd.players.every(({ link }) => link.kind === 'open'), 60_000);
      const seconds = ((performance.now() - up) / 1000).toFixed(1);
      await pause(size === 'full' ? 5000 : 1500);
      const apart = crowd.players.filter(({ last }) =>
        last?.table.seats.some((s) => s.kind === 'person' && !s.present),
      );
      crowd.stop();
      const violations = [
        ...(open ? [] : ['not everybody came back']),
        ...(apart.length > 0 ? [`${apart.length} see somebody as gone who is here`] : []),
      ];
      return { happened: crowd.players.length, verdict: { violations }, note: `all back after ${seconds} s` };
    } finally {
      await server.end('SIGKILL');
      await discard();
    }
  },
};
