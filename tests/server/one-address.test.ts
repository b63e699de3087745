// The limits of one address: a whole club behind one router stays within them, and nobody has more addresses than one.
import { describe, expect, onTestFinished, test } from 'vitest';
import { readConfig } from '../../server/config.ts';
import { addressKey } from '../../server/http/address-key.ts';
import {
  cardPath,
  classPath,
  HOUSE_CARD_PATH,
  roomPath,
  tablePath,
} from '../../shared-engine/protocol/paths.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { act, joinClass, openClass } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { anyAnswer, deal, type Guest, openRoom, ownView, sitDown, takeSeat } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

const PEOPLE = 60;
/** Files that a first visit takes: the bound that the build is held to. */
const FILES = 15;

/** As a server has them to which nobody gave others. */
function defaultLimits(): Record<string, string> {
  const read = readConfig({});
  if (!read.ok) throw new Error(read.problems.join());
  const { requestsPerMinute, roomsPerMinute, socketsPerIp } = read.config.limits;
  return {
    REQUESTS_PER_MINUTE: String(requestsPerMinute),
    ROOMS_PER_MINUTE: String(roomsPerMinute),
    SOCKETS_PER_IP: String(socketsPerIp),
  };
}

async function server(settings = defaultLimits()): Promise<TestServer> {
  const started = await startServer({ seed: 'one address', settings });
  onTestFinished(() => started.stop());
  return started;
}

async function get({ url }: TestServer, path: string, secret = ''): Promise<number> {
  const response = await fetch(`${url}${path}`, { headers: { authorization: `Bearer ${secret}` } });
  await response.arrayBuffer();
  return response.status;
}

/** The document and every file of the page, as a browser that has none of them asks for them. */
async function visit(at: TestServer, path: string): Promise<void> {
  const files = Array.from({ length: FILES - 1 }, () => '/assets/main-abc123.js');
  for (const file of [path, ...files]) expect([file, await get(at, file)]).toEqual([file, 200]);
}

/** A page that opens at a seat, with its files stored already: the table, its card, a ticket and a socket. */
async function arrive(at: TestServer, guest: Guest): Promise<Peer> {
  expect(await get(at, tablePath(guest.code))).toBe(200);
  for (const path of [roomPath(guest.code), cardPath(guest.code)]) {
    expect([path, await get(at, path, guest.secret)]).toEqual([path, 200]);
  }
  return sitDown(at, guest);
}

async function chooseFirst(peer: Peer): Promise<void> {
  const answer = anyAnswer(ownView(peer), stream('club', `seat ${peer.table.you}`));
  expect(await peer.choose(answer)).toMatchObject({ kind: 'ack' });
}

function tableOf(peers: readonly Peer[], at: number): readonly Peer[] {
  return peers.slice(4 * at, 4 * at + 4);
}

describe('sixty people behind one router', () => {
  test('AC2 open tables, join, play and reload three times at once', async () => {
    const at = await server();
    const tables = Array.from({ length: PEOPLE / 4 }, (_, n) => n);
    const guests = await Promise.all(
      tables.map(async () => {
        const host = await openRoom(at);
        const friends = await Promise.all([1, 2, 3].map(() => takeSeat(at, host.code)));
        return [host, ...friends];
      }),
    );
    const people = guests.flat();
    expect(people).toHaveLength(PEOPLE);
    await Promise.all(people.map((guest) => visit(at, tablePath(guest.code))));
    let peers = await Promise.all(people.map((guest) => arrive(at, guest)));
    await Promise.all(tables.map((n) => deal(tableOf(peers, n))));
    await Promise.all(peers.map(chooseFirst));
    for (let reload = 0; reload < 3; reload++) {
      peers = await Promise.all(
        people.map(async (guest, n) => {
          // The old socket ends late, as on a weak line: the new one is there before.
          const again = await arrive(at, guest);
          await peers[n]!.close();
          return again;
        }),
      );
    }
    expect(peers.map(({ table }) => table.you)).toEqual(people.map(({ seat }) => seat));
    expect(peers.every(({ table }) => table.round === 1)).toBe(true);
  });

  test('AC2 join one class, are dealt to, and reload at once', async () => {
    const at = await server();
    const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('club') }, { id: 'one' })]);
    const teacher = await openClass(at, drill);
    const players = await Promise.all(
      Array.from({ length: PEOPLE }, async (_, n) => {
        await visit(at, `/c/${teacher.code}`);
        expect(await get(at, classPath(teacher.code))).toBe(200);
        return joinClass(at, teacher.code, `Player ${n}`);
      }),
    );
    expect((await act(at, teacher, { kind: 'deal-next' })).status).toBe(200);
    const peers = await Promise.all(players.map((player) => arrive(at, player)));
    await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
    await Promise.all(peers.map(chooseFirst));
    const again = await Promise.all(players.map((player) => arrive(at, player)));
    expect(again.every((peer) => ownView(peer).answer !== null || peer.table.round === 1)).toBe(true);
  });
});

test('AC1 files of the page count for no limit, while the API is limited in our words', async () => {
  const at = await server({ REQUESTS_PER_MINUTE: '1' });
  expect(await get(at, HOUSE_CARD_PATH)).toBe(200);
  expect(await get(at, HOUSE_CARD_PATH)).toBe(429);
  for (const path of ['/', '/t/ABCD2345', '/c/ABCD2345', '/lead']) await visit(at, path);
});

describe('AC3 one address', () => {
  test('is an IPv4 address, also where it is written as IPv6', () => {
    expect(addressKey('192.0.2.7')).toBe('192.0.2.7');
    expect(addressKey('::ffff:192.0.2.7')).toBe('192.0.2.7');
    expect(addressKey('::FFFF:192.0.2.8')).toBe('192.0.2.8');
    expect(addressKey(undefined)).toBe('unknown');
  });

  test.each([
    ['2001:db8:1:2::1', '2001:db8:1:2::/64'],
    ['2001:db8:1:2:ffff:ffff:ffff:ffff', '2001:db8:1:2::/64'],
    ['2001:0DB8:0001:0002:0:0:0:9', '2001:db8:1:2::/64'],
    ['2001:db8:1:3::1', '2001:db8:1:3::/64'],
    ['2001:db8::1', '2001:db8:0:0::/64'],
    ['2001:db8::2:0:0:0:1', '2001:db8:0:2::/64'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
    ['::1', '0:0:0:0::/64'],
    ['64:ff9b::192.0.2.7', '64:ff9b:0:0::/64'],
  ])('%s counts as the network %s', (ip, network) => {
    expect(addressKey(ip)).toBe(network);
  });

  test('of IPv6 is no other one for each of the 2^64 that a subscriber may make up', async () => {
    const at = await server({ REQUESTS_PER_MINUTE: '2', TRUST_PROXY_HOPS: '1' });
    const from = async (ip: string) => {
      const headers = { 'x-forwarded-for': ip };
      return (await fetch(`${at.url}${HOUSE_CARD_PATH}`, { headers })).status;
    };
    expect(await from('2001:db8:1:2::1')).toBe(200);
    expect(await from('2001:db8:1:2::2')).toBe(200);
    expect(await from('2001:db8:1:2:3::4')).toBe(429);
    expect(await from('2001:db8:1:4::1')).toBe(200);
  });
});
