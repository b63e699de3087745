// What people and programs do to a server from outside: nonsense, floods, slow reading, everybody coming back at once.

import { once } from 'node:events';
import { WebSocket, WebSocketServer } from 'ws';
import { systemClock } from '../../../server/clock.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { lineOf } from '../../../server/ws/line.ts';
import { CLOSE, type Random, stream } from '../../../shared-engine/index.ts';
import { temporaryFolder } from '../../kit/folder.ts';
import { anyAnswer, deal, ownView, tableOfFour, watch } from '../../kit/http-client.ts';
import { Peer } from '../../kit/sockets.ts';
import { storeOf } from '../../kit/stores.ts';
import { Crowd } from './crowd.ts';
import { type House, houseAt, pause } from './server-under-test.ts';
import { nonsense, readNonsense } from './malformed-frames.ts';
import type { Found, Input, Scenario } from './scenario.ts';

interface Done {
  readonly happened: number;
  readonly faults: readonly string[];
  readonly note?: string;
}

/** A server with a room at play while something is done to it from outside. */
async function whilePlaying(
  { seed, size }: Input,
  disturb: (house: House, crowd: Crowd, random: Random) => Promise<Done>,
): Promise<Found> {
  const { folder, discard } = await temporaryFolder();
  const house = await houseAt({ DATA_DIR: folder }, size);
  try {
    await house.start();
    const crowd = await Crowd.gather({ rooms: 1, urls: [house.url], seed, thinking: 150, deadline: null });
    const { happened, faults, note } = await disturb(house, crowd, stream(seed, 'at the door'));
    const store = storeOf(openSqlite(`${folder}/quadrille.db`));
    const verdict = await crowd.finish(store, performance.now());
    await store.close();
    return {
      happened,
      verdict: { ...verdict, faults: [...faults, ...verdict.faults] },
      ...(note && { note }),
    };
  } finally {
    await house.end('SIGKILL');
    await discard();
  }
}

export const malformed: Scenario = {
  what: 'malformed frames, bad UTF-8, deep JSON, __proto__, random bytes',
  run: (input) =>
    whilePlaying(input, async (house, crowd, random) => {
      const read = input.size === 'full' ? 100_000 : 3000;
      const faults = readNonsense(read, random);
      const sockets = input.size === 'full' ? 200 : 8;
      let sent = 0;
      for (let at = 0; at < sockets; at++) {
        const peer = await Peer.open(house.url);
        for (let frame = 0; frame < 30; frame++, sent++)
          peer.sendRaw(nonsense(random), random.below(3) === 0);
        if (at % 2 === 0) peer.socket.terminate();
        else await Promise.race([peer.roundTrip(), peer.ended]);
        peer.socket.terminate();
      }
      const tooBig = await Peer.open(house.url);
      tooBig.sendRaw('x'.repeat(5000));
      if ((await tooBig.ended) !== CLOSE.tooBig) faults.push('a frame that is too big was taken');
      const [code] = crowd.codes;
      if ((await fetch(`${house.url}/healthz`)).status !== 200) faults.push(`the server of ${code} is down`);
      return { happened: read + sent, faults };
    }),
};

export const flooded: Scenario = {
  what: 'floods of frames',
  run: (input) =>
    whilePlaying(input, async (house, crowd) => {
      const floods = input.size === 'full' ? 60 : 4;
      const faults: string[] = [];
      for (let at = 0; at < floods; at++) {
        const peer = await watch(house, crowd.codes[0]!);
        for (let frame = 0; frame < 1000; frame++) peer.sendRaw('{"kind":"act"}');
        if ((await peer.ended) !== CLOSE.tooManyFrames) faults.push('a flood was not cut off');
      }
      return { happened: floods, faults };
    }),
};

export const slowReader: Scenario = {
  what: 'neighbours do not wait for people who read nothing',
  run: (input) =>
    whilePlaying(input, async (house) => {
      const { code, peers } = await tableOfFour(house);
      await deal(peers);
      const phase = input.size === 'full' ? 45_000 : 15_000;
      const before = await waitsFor(peers, phase / 3);
      const slow = await Promise.all([watch(house, code), watch(house, code), watch(house, code)]);
      for (const { socket } of slow) socket.pause();
      const after = await waitsFor(peers, phase);
      for (const { socket } of [...slow, ...peers]) socket.terminate();
      const [lone, crowded] = [percentile(before, 0.99), percentile(after, 0.99)];
      const faults = crowded > 2 * lone + 20 ? [`neighbours wait ${crowded} ms instead of ${lone} ms`] : [];
      return { happened: slow.length, faults, note: `p99 ${crowded} ms beside ${lone} ms before` };
    }),
};

/** Everybody seals and takes back as fast as may be; how long each answer took, in milliseconds. */
async function waitsFor(peers: readonly Peer[], ms: number): Promise<number[]> {
  const end = performance.now() + ms;
  const waits: number[] = [];
  await Promise.all(
    peers.slice(0, 3).map(async (peer) => {
      while (performance.now() < end) {
        const { answer, stage } = ownView(peer);
        if (stage.phase !== 'passing') throw new Error('the round went on');
        const started = performance.now();
        const back = { kind: 'take-back', step: stage.step } as const;
        await peer.choose(answer === null ? anyAnswer(ownView(peer), { below: () => 0 }) : back);
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

export const cutOff: Scenario = {
  what: 'a line whose reader reads nothing is cut before 64 KiB and one message wait',
  async run() {
    const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false });
    await once(server, 'listening');
    const taken = new Promise<WebSocket>((resolve) => server.on('connection', resolve));
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('no port');
    const client = new WebSocket(`ws://127.0.0.1:${address.port}`);
    const [socket] = await Promise.all([taken, once(client, 'open')]);
    client.pause();
    const line = lineOf(socket, systemClock);
    const message = { kind: 'refused', id: null, code: 'bad-frame', sentence: 'x'.repeat(4000) } as const;
    let most = 0;
    let sent = 0;
    for (; socket.readyState === WebSocket.OPEN && sent < 100_000; sent++) {
      line.send(message);
      most = Math.max(most, socket.bufferedAmount);
      if (sent % 16 === 0) await pause(0);
    }
    const faults = most > 64 * 1024 + 4200 ? [`${most} bytes waited`] : [];
    if (socket.readyState === WebSocket.OPEN) faults.push('the line was never cut');
    client.terminate();
    socket.terminate();
    server.close();
    return { happened: 1, verdict: { faults }, note: `${most} bytes waited at most, after ${sent} messages` };
  },
};

export const storm: Scenario = {
  what: 'everybody comes back at once after a kill',
  async run({ seed, size }) {
    const { folder, discard } = await temporaryFolder();
    const house = await houseAt({ DATA_DIR: folder, MAX_SOCKETS: '20000' }, size);
    try {
      await house.start();
      const rooms = size === 'full' ? 500 : 12;
      const crowd = await Crowd.gather({
        rooms,
        urls: [house.url],
        seed,
        thinking: 3_600_000,
        deadline: null,
      });
      await house.end('SIGKILL');
      await house.start();
      const up = performance.now();
      const open = await crowd.until(() => crowd.residents.every(({ link }) => link.kind === 'open'), 60_000);
      const seconds = ((performance.now() - up) / 1000).toFixed(1);
      await pause(size === 'full' ? 5000 : 1500);
      const apart = crowd.residents.filter(({ last }) =>
        last?.table.seats.some((s) => s.kind === 'person' && !s.present),
      );
      crowd.stop();
      const faults = [
        ...(open ? [] : ['not everybody came back']),
        ...(apart.length > 0 ? [`${apart.length} see somebody as gone who is here`] : []),
      ];
      return { happened: crowd.residents.length, verdict: { faults }, note: `all back after ${seconds} s` };
    } finally {
      await house.end('SIGKILL');
      await discard();
    }
  },
};
