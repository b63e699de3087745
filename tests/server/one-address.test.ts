// The limits of one address: a whole club behind one router stays within them, and nobody has more addresses than one.
import { describe, expect, onTestFinished, test } from 'vitest';
import { readConfig } from '../../server/config.ts';
import { addressKey } from '../../server/http/address-key.ts';
import { classPath, HOUSE_CARD_PATH } from '../../shared-engine/protocol/paths.ts';
import { act, joinClass, openClass } from '../kit/class-room.ts';
import { chooseFirst, clubEvening, Router } from '../kit/club-evening.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { ownView } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

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

/** As a page built into so many files; what is refused fails the test. */
function routerAt(at: TestServer): Router {
  const router = new Router(
    at,
    Array.from({ length: FILES - 1 }, () => '/assets/main-abc123.js'),
  );
  onTestFinished(() => expect(router.refused).toEqual([]));
  return router;
}

describe('sixty people behind one router', () => {
  test('AC2 open tables, join, play and reload three times at once', async () => {
    const { people, peers } = await clubEvening(routerAt(await server()), { tables: PEOPLE / 4, reloads: 3 });
    expect(people).toHaveLength(PEOPLE);
    expect(peers.map(({ table }) => table.you)).toEqual(people.map(({ seat }) => seat));
    expect(peers.every(({ table }) => table.round === 1)).toBe(true);
  });

  test('AC2 join one class, are dealt to, and reload at once', async () => {
    const at = await server();
    const router = routerAt(at);
    const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('club') }, { id: 'one' })]);
    const teacher = await openClass(at, drill);
    const players = await Promise.all(
      Array.from({ length: PEOPLE }, async (_, n) => {
        await router.visit(`/c/${teacher.code}`);
        await router.get(classPath(teacher.code));
        return joinClass(at, teacher.code, `Player ${n}`);
      }),
    );
    expect((await act(at, teacher, { kind: 'deal-next' })).status).toBe(200);
    const peers = await Promise.all(players.map((player) => router.arrive(player)));
    await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
    await Promise.all(peers.map(chooseFirst));
    const again = await Promise.all(players.map((player) => router.arrive(player)));
    expect(again.every((peer) => ownView(peer).answer !== null || peer.table.round === 1)).toBe(true);
  });
});

test('AC1 files of the page count for no limit, while the API is limited in our words', async () => {
  const at = await server({ REQUESTS_PER_MINUTE: '1' });
  const statuses = [await fetch(at.url + HOUSE_CARD_PATH), await fetch(at.url + HOUSE_CARD_PATH)];
  expect(statuses.map(({ status }) => status)).toEqual([200, 429]);
  const router = routerAt(at);
  for (const path of ['/', '/t/ABCD2345', '/c/ABCD2345', '/lead']) await router.visit(path);
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
