// Who is here, as the log of the room has it: over two servers, over a server's end, and for who comes back with news.
import { afterEach, describe, expect, test } from 'vitest';
import { PRESENCE_CHECK_MS } from '../../server/presence/presence-check.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { memoryNodes } from '../../server/store/nodes-memory.ts';
import { publishingStore } from '../../server/store/publishing-store.ts';
import { memoryWakeHub } from '../../server/store/wake-memory.ts';
import { BOT_TIMEOUT_MS } from '../../server/workers/bots-with-fallback.ts';
import { applyDelta } from '../../shared-engine/protocol/table.ts';
import { CLOSE, RETRY_SPREAD_MS } from '../../shared-engine/protocol/version.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import { FakeClock } from '../kit/clock.ts';
import {
  ALONE,
  anyAnswer,
  deal,
  FRIENDS,
  type Guest,
  isClosed,
  openRoom,
  ownView,
  playOn,
  sitDown,
  tableOfFour,
  takeSeat,
  ticketFor,
} from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { seededEntropy, startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

const started: TestServer[] = [];
afterEach(async () => {
  await Promise.all(started.splice(0).map((server) => server.stop()));
});

const first = (peer: Peer) => anyAnswer(ownView(peer), { below: () => 0 });

async function one(options: Parameters<typeof startServer>[0] = {}) {
  const server = await startServer({ seed: 'presence', ...options });
  started.push(server);
  return server;
}

/** Two servers that share rooms, clock and the knowledge of each other. */
async function two(deadline: number | null = null) {
  const [rooms, clock, hub] = [memoryStore(), new FakeClock(), memoryWakeHub()];
  const circle = memoryNodes(seededEntropy('circle'));
  const nodes = [circle.join(), circle.join()];
  const servers = await Promise.all(
    nodes.map((node, at) => {
      const bus = hub.join();
      return one({ seed: `server ${at}`, clock, bus, nodes: node, store: publishingStore(rooms, bus) });
    }),
  );
  const [here, there] = [servers[0]!, servers[1]!];
  const terms = { deadline, revealRacks: false };
  const host = await openRoom(here, { ...FRIENDS, terms, bots: ['casual', null, 'casual'] });
  const ines = await sitDown(here, host);
  const guest = await takeSeat(there, host.code);
  const tomas = await sitDown(there, guest);
  /** As a machine does that loses its power: nothing is said to anybody, and the others notice. */
  const fail = async (at: 0 | 1) => {
    await nodes[at]!.close();
    clock.advance(PRESENCE_CHECK_MS);
  };
  return { here, there, clock, rooms, host, guest, ines, tomas, fail };
}

const isHere = (peer: Peer, seat: number) => {
  const info = peer.table.seats[seat]!;
  return info.kind === 'person' && info.present;
};

describe('two servers of one room', () => {
  test('PR1 show at one of them who is connected at the other, and who no longer is', async () => {
    const { ines, tomas, guest } = await two();
    await ines.untilTable(() => isHere(ines, guest.seat), 'Tomas');
    await tomas.close();
    await ines.untilTable(() => !isHere(ines, guest.seat), 'the absence');
  });

  test('PR2 replace the first page of a person by a second one at the other, and the late end of the first does no harm', async () => {
    const { there, host, ines, tomas } = await two();
    const young = await sitDown(there, host);
    expect(await ines.ended).toBe(CLOSE.replaced);
    await Promise.all([young.roundTrip(), tomas.roundTrip()]);
    expect([isHere(young, 0), isHere(tomas, 0)]).toEqual([true, true]);
  });

  test('PR3 keep the newer connection of a page, though a slow server hears of the older one late', async () => {
    const { here, there, host, tomas } = await two();
    const come = async (server: TestServer, nth: number) => {
      const peer = await Peer.open(server.url);
      const { ticket } = await ticketFor(server, host);
      peer.send({ kind: 'hello', id: 'hello', versions: [1, 1], ticket, from: { page: 'page', nth } });
      await peer.untilTable(() => true);
      return peer;
    };
    const newer = await come(there, 2);
    const older = await come(here, 1);
    await older.close();
    await Promise.all([newer.roundTrip(), tomas.roundTrip()]);
    expect(await newer.act({ kind: 'ready', ready: true })).toMatchObject({ kind: 'ack' });
    expect(isHere(tomas, 0)).toBe(true);
    const newest = await come(here, 3);
    expect(await newer.ended).toBe(CLOSE.replaced);
    expect(isHere(newest, 0)).toBe(true);
  });

  test('PR4 count the people of a server that is gone as disconnected, once', async () => {
    const { guest, ines, fail, rooms, host } = await two();
    await ines.untilTable(() => isHere(ines, guest.seat), 'Tomas');
    await fail(1);
    await ines.untilTable(() => !isHere(ines, guest.seat), 'the absence');
    const went = (await eventsOf(rooms, host.code))!.filter(({ event }) => event.kind === 'disconnected');
    expect(went).toHaveLength(1);
  });

  test('K3 let the clock run on while one of them watches it, and anew when none did', async () => {
    const { here, there, clock, rooms, ines, tomas, fail, host, guest } = await two(60);
    await deal([ines, tomas]);
    const inHand = async () =>
      (await eventsOf(rooms, host.code))!.filter(({ event }) => event.kind === 'timer-claimed');
    await expect.poll(inHand).toHaveLength(2);
    clock.advance(20_000);
    await fail(1);
    const moved = await sitDown(here, guest);
    expect(moved.table.remaining).toBe(40_000 - PRESENCE_CHECK_MS);
    await fail(0);
    await Promise.all([here.stop(), there.stop()]);
    clock.advance(3_600_000);
    const bus = memoryWakeHub().join();
    const third = await one({ seed: 'third', clock, bus, store: here.store });
    const back = await sitDown(third, host);
    await back.untilTable(({ remaining }) => remaining === 60_000, 'the whole time');
  });
});

describe('who comes back', () => {
  async function resumed(server: TestServer, guest: Guest, seq: number, you: Seat | null = guest.seat) {
    const peer = await Peer.open(server.url);
    const { ticket } = await ticketFor(server, guest);
    peer.send({ kind: 'hello', id: 'hello', versions: [1, 1], ticket, resume: { seq, you } });
    const answer = await peer.until(
      'news or a table',
      (m) => (m.kind === 'delta' || m.kind === 'table') && m,
    );
    return { peer, answer };
  }
  const lastSeq = (peer: Peer) => {
    const last = peer.messages.findLast((m) => m.kind === 'table');
    return last?.kind === 'table' ? last.seq : 0;
  };

  test('RS2 is told what is new since the table it has, which makes the table that the others have', async () => {
    const server = await one();
    const { guests, peers } = await tableOfFour(server);
    await deal(peers);
    await peers[0]!.choose(first(peers[0]!));
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    const had = { seq: lastSeq(peers[0]!), table: peers[0]!.table };
    await peers[0]!.close();
    await peers[1]!.choose(first(peers[1]!));
    const { peer, answer } = await resumed(server, guests[0]!, had.seq);
    if (answer.kind !== 'delta') throw new Error('the whole table came');
    expect(answer.after).toBe(had.seq);
    expect(answer.table).not.toHaveProperty('round');
    await peer.close();
    const whole = await sitDown(server, guests[0]!);
    expect(applyDelta(had.table, answer.table)).toEqual(whole.table);
  });

  test('RS2 with a table from another seat, or from none, gets all of it', async () => {
    const server = await one();
    const guest = await openRoom(server);
    const had = lastSeq(await sitDown(server, guest));
    expect((await resumed(server, guest, had)).answer.kind).toBe('delta');
    expect((await resumed(server, guest, had, null)).answer.kind).toBe('table');
    expect((await resumed(server, guest, had, 3)).answer.kind).toBe('table');
  });

  test('RS2 with a table that is too old, or from the future, gets all of it', async () => {
    const server = await one();
    const guest = await openRoom(server);
    const peer = await sitDown(server, guest);
    const old = lastSeq(peer);
    for (let times = 0; times < 70; times++) {
      await peer.act({ kind: 'seat-bot', seat: 1, style: times % 2 === 0 ? 'casual' : 'strong' });
      server.clock.advance(100);
    }
    expect((await resumed(server, guest, old)).answer.kind).toBe('table');
    expect((await resumed(server, guest, 100_000)).answer.kind).toBe('table');
  });

  test('RS2 is told the same after a restart of the server', async () => {
    const server = await one();
    const { guests, peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    const had = lastSeq(peers[2]!);
    const { clock, store } = server;
    await server.stop();
    const next = await one({ seed: 'next', clock, store });
    const { answer } = await resumed(next, guests[2]!, had);
    expect(answer.kind).toBe('delta');
    if (answer.kind === 'delta') expect(Object.keys(answer.table).sort()).toEqual(['remaining', 'seats']);
  });
});

test('DL9 a server that closes tells every connection another time to come back', async () => {
  const server = await one();
  const { peers } = await tableOfFour(server);
  const hints = peers.map(
    ({ socket }) => new Promise<string>((resolve) => socket.on('close', (_, why) => resolve(String(why)))),
  );
  await server.stop();
  const waits = (await Promise.all(hints)).map(Number);
  for (const wait of waits) expect(wait >= 0 && wait < RETRY_SPREAD_MS).toBe(true);
  expect(new Set(waits).size).toBeGreaterThan(1);
});

test('SC3 bots that hang, throw or answer nonsense hold nobody up', async () => {
  let asked = 0;
  const server = await one({
    bots: {
      choose() {
        asked++;
        if (asked % 3 === 0) return new Promise(() => {});
        if (asked % 3 === 1) throw new Error('no idea');
        return Promise.resolve({ kind: 'pass', step: 'first-right', tiles: ['joker'], blind: 0 });
      },
    },
  });
  const peer = await sitDown(server, await openRoom(server, ALONE));
  await peer.untilTable(({ round }) => round === 1, 'the deal');
  let done = false;
  const played = playOn(peer, 'with bad bots').finally(() => {
    done = true;
  });
  while (!done) {
    server.clock.advance(BOT_TIMEOUT_MS);
    await peer.roundTrip();
  }
  await played;
  expect(isClosed(peer)).toBe(true);
});
