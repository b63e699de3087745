// What an attacker may try over HTTP and at the sockets; the rest is in sockets, http, names and roles.
import { readdirSync, readFileSync } from 'node:fs';
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  CLASSES_PATH,
  CLUBS_PATH,
  ROOMS_PATH,
  roomPath,
  seatsPath,
  ticketPath,
} from '../../shared-engine/protocol/paths.ts';
import { PASS_SIZE } from '../../shared-engine/rules/exchange/schedule.ts';
import type { SeatView } from '../../shared-engine/rules/view/view.ts';
import { cardOf, patternOf } from '../kit/card-files.ts';
import { TERMS } from '../kit/class-room.ts';
import {
  deal,
  FRIENDS,
  openRoom,
  ownView,
  playOn,
  sitDown,
  tableOfFour,
  takeSeat,
  ticketFor,
  watch,
} from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'security' });
});
afterEach(() => server.stop());

async function restart(settings: Readonly<Record<string, string>>): Promise<void> {
  await server.stop();
  server = await startServer({ seed: 'security', settings });
}

describe('the packages', () => {
  // Advisories on sockets are closed from ws 8.21 on; what is installed is what the lock file says.
  test('have ws 8.21 or newer, wherever it is installed', () => {
    const lock: { packages: Record<string, { version?: string }> } = JSON.parse(
      readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8'),
    );
    const versions = Object.entries(lock.packages)
      .filter(([place]) => /(^|\/)node_modules\/ws$/.test(place))
      .map(([, { version }]) => version ?? '');
    expect(versions.length).toBeGreaterThan(0);
    for (const version of versions) {
      const [major, minor] = version.split('.').map(Number);
      expect([major, minor! >= 21]).toEqual([8, true]);
    }
  });

  test('of the peers of the load benchmark are not among the server’s', () => {
    const own = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
    const peers: { dependencies: Record<string, string> } = JSON.parse(
      readFileSync(new URL('../bench/peers/package.json', import.meta.url), 'utf8'),
    );
    const names = Object.keys(peers.dependencies).filter((name) => name !== 'ws');
    expect(names.length).toBeGreaterThan(2);
    expect(names.filter((name) => own.includes(`"${name}"`))).toEqual([]);
  });
});

describe('the statements of the stores', () => {
  const folder = new URL('../../server/store/', import.meta.url);
  const sources = readdirSync(folder).map((file) => readFileSync(new URL(file, folder), 'utf8'));
  const STATEMENT = /(`[^`]*`|'[^'\n]*'|"[^"\n]*")(\s*\+)?/g;
  const isSql = (text: string) => /\b(SELECT|INSERT INTO|UPDATE|DELETE FROM|WHERE|VALUES)\b/.test(text);
  const statements = sources.flatMap((source) =>
    [...source.matchAll(STATEMENT)].filter(([text]) => isSql(text)),
  );

  test('are found, and hold no value: each is one text with places for parameters', () => {
    expect(statements.length).toBeGreaterThan(20);
    expect(statements.map(([text]) => text).filter((text) => text.includes('${'))).toEqual([]);
    expect(statements.filter(([, , joined]) => joined !== undefined).map(([text]) => text)).toEqual([]);
  });

  test('keep a name that looks like one as a name', async () => {
    const name = `'); DROP TABLE x--`;
    const { body } = await request(server.url)
      .post(ROOMS_PATH)
      .send({ ...FRIENDS, name });
    const seats = (await request(server.url).get(roomPath(body.code))).body.seats;
    expect(seats[0].name).toBe(name);
  });
});

describe('an address', () => {
  test('opens so many sockets and no more, and one that closes makes room', async () => {
    await restart({ SOCKETS_PER_IP: '3' });
    const open = [await Peer.open(server.url), await Peer.open(server.url), await Peer.open(server.url)];
    await expect(Peer.open(server.url)).rejects.toThrow('503');
    await open[0]!.close();
    await expect.poll(() => Peer.open(server.url).then(() => 'open', String)).toBe('open');
    await expect(Peer.open(server.url)).rejects.toThrow('503');
  });

  const from = (address: string) =>
    request(server.url).get('/api/cards/house').set('x-forwarded-for', address);

  test('cannot be made up: X-Forwarded-For counts for nothing without a proxy', async () => {
    await restart({ REQUESTS_PER_MINUTE: '2' });
    for (const address of ['192.0.2.1', '192.0.2.2']) expect((await from(address)).status).toBe(200);
    expect((await from('192.0.2.3')).status).toBe(429);
  });

  test('is the one that the last of the configured proxies saw, whatever stands before it', async () => {
    await restart({ REQUESTS_PER_MINUTE: '2', TRUST_PROXY_HOPS: '1' });
    for (let n = 0; n < 2; n++) expect((await from(`192.0.2.${n}, 198.51.100.7`)).status).toBe(200);
    expect((await from('192.0.2.9, 198.51.100.7')).status).toBe(429);
    expect((await from('198.51.100.8')).status).toBe(200);
  });
});

describe('a card of one’s own', () => {
  test('and a drill are checked a tenth as often as rooms are opened, and do not use up the rooms', async () => {
    await restart({ ROOMS_PER_MINUTE: '20' });
    const statusOf = async (path: string, body: object) =>
      (await request(server.url).post(path).send(body)).status;
    const open = (card: unknown) => statusOf(ROOMS_PATH, { ...FRIENDS, card });
    const drill = () => statusOf(CLASSES_PATH, { drill: 'none', terms: TERMS, card: null });
    expect([await open({}), await open({}), await open({})]).toEqual([422, 422, 429]);
    expect([await drill(), await drill(), await drill()]).toEqual([422, 422, 429]);
    // A club's page is stored as long as a class.
    const club = () => statusOf(CLUBS_PATH, { name: ' ' });
    expect([await club(), await club(), await club()]).toEqual([422, 422, 429]);
    expect(await open(null)).toBe(201);
  });

  test('that would come to more hands than the server can hold is rejected in words', async () => {
    const tile = (name: string, suit: string, plus: number) => ({
      size: 2,
      tile: { number: { var: name, plus }, suit: { var: suit } },
    });
    const groups = ['a', 'b', 'c'].flatMap((name, at) => {
      const suit = 'pqr'.charAt(at);
      return [tile(name, suit, 0), { ...tile(name, suit, 1), size: at === 0 ? 2 : 3 }];
    });
    const patterns = Array.from({ length: 40 }, (_, at) => patternOf(groups, { id: `pattern-${at}` }));
    const { status, body } = await request(server.url)
      .post(ROOMS_PATH)
      .send({ ...FRIENDS, card: cardOf(...patterns) });
    expect([status, body.code]).toEqual([422, 'bad-card']);
    expect(body.problems.join()).toContain('hands');
  });
});

describe('a code', () => {
  test('that is wrong and one whose table is gone get one answer, byte for byte', async () => {
    const { code } = await openRoom(server);
    await server.store.remove(code);
    await server.stop();
    server = await startServer({ seed: 'security again', store: server.store, clock: server.clock });
    const answers = new Set<string>();
    for (const known of [code, 'ZZZZZZZZ', 'not a code']) {
      const path = roomPath(known);
      for (const call of [
        request(server.url).get(path),
        request(server.url).post(seatsPath(known)).send({ name: 'Odo', seat: null }),
        request(server.url).post(ticketPath(known)).send({}),
        request(server.url).get(`${path}/card`),
      ]) {
        const { status, text } = await call;
        answers.add(`${status} ${text}`);
      }
    }
    expect([...answers]).toHaveLength(1);
  });

  test('cannot be tried out fast: each look counts against the address', async () => {
    await restart({ REQUESTS_PER_MINUTE: '5' });
    const statuses: number[] = [];
    for (let n = 0; n < 8; n++) statuses.push((await request(server.url).get(roomPath('ZZZZZZZZ'))).status);
    expect(statuses).toEqual([404, 404, 404, 404, 404, 429, 429, 429]);
  });
});

describe('a seat', () => {
  test('PR2 has at most one socket that plays: three and more replace one another', async () => {
    const guest = await openRoom(server);
    const peers: Peer[] = [];
    for (let n = 0; n < 4; n++) {
      peers.push(await sitDown(server, guest));
    }
    await Promise.all(peers.slice(0, 3).map((peer) => peer.ended));
    expect(await peers[3]!.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
  });

  test('is held by a secret that another room does not know', async () => {
    const [mine, other] = [await openRoom(server), await openRoom(server)];
    expect((await ticketFor(server, { code: other.code, secret: mine.secret })).seat).toBeNull();
    const peer = await sitDown(server, mine);
    expect(peer.table).toMatchObject({ code: mine.code, you: 0 });
  });
});

describe('results', () => {
  test('DL3 of one step leave in one turn, in frames of one size', async () => {
    const { peers } = await seatedFour();
    const sizes = new Map<number, number[]>();
    for (const peer of peers) {
      for (const frame of peer.frames) {
        const message: { kind: string; seq?: number } = JSON.parse(frame);
        if (message.kind !== 'delta' || message.seq === undefined) continue;
        sizes.set(message.seq, [...(sizes.get(message.seq) ?? []), frame.length]);
      }
    }
    const heardByAll = [...sizes.values()].filter((all) => all.length === 4);
    expect(heardByAll.length).toBeGreaterThan(3);
    for (const all of heardByAll) expect(new Set(all).size).toBe(1);
  });

  test('O1 C3 DL3 of one choice are as long for everybody whatever was chosen', async () => {
    const passes = [0, 1, 2, 3].map((blind) => sizeHeard('first-left', { blind }));
    const votes = [true, false].map((go) => sizeHeard('vote', { go }));
    expect(new Set(await Promise.all(passes)).size).toBe(1);
    expect(new Set(await Promise.all(votes)).size).toBe(1);
  });

  /** Characters of the frame that tells a spectator that the first seat has chosen. */
  async function sizeHeard(at: 'first-left' | 'vote', { blind = 0, go = true }): Promise<number> {
    const { code, peers } = await tableOfFour(server);
    const spectator = await watch(server, code);
    await deal(peers);
    const isThere = ({ stage }: SeatView) =>
      stage.phase === 'voting' || (stage.phase === 'passing' && stage.step === at);
    await Promise.all(peers.map((peer) => playOn(peer, 'sizes', isThere)));
    await Promise.all([...peers, spectator].map((peer) => peer.roundTrip()));
    const heard = spectator.frames.length;
    const [first] = peers as [Peer, ...Peer[]];
    const tiles = ownView(first).rack.filter((face) => face !== 'joker');
    const pass = { kind: 'pass', step: 'first-left', tiles: tiles.slice(blind, PASS_SIZE), blind } as const;
    await first.choose(at === 'vote' ? { kind: 'vote', step: 'vote', go } : pass);
    await spectator.roundTrip();
    expect(spectator.frames.length).toBe(heard + 1);
    return spectator.frames[heard]!.length;
  }

  async function seatedFour() {
    const host = await openRoom(server);
    const guests = [host];
    for (const name of ['Tomas', 'Wilma', 'Odo'])
      guests.push(await takeSeat(server, host.code, { name, seat: null }));
    const peers: Peer[] = [];
    for (const guest of guests) peers.push(await sitDown(server, guest));
    for (const peer of peers) await peer.act({ kind: 'ready', ready: true });
    await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === 1)));
    for (const peer of peers) {
      const { view } = peer.table;
      const tiles = view?.audience === 'seat' ? view.rack.filter((face) => face !== 'joker') : [];
      await peer.choose({ kind: 'pass', step: 'first-right', tiles: tiles.slice(0, 3), blind: 0 });
    }
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    return { peers };
  }
});

describe('word of TLS', () => {
  const told = async (headers: Record<string, string> = {}) =>
    (await request(server.url).get('/').set(headers)).headers['strict-transport-security'];

  test('is never given over plain HTTP, nor by a server that was not asked for it', async () => {
    await restart({ TRUST_PROXY_HOPS: '1' });
    expect(await told({ 'x-forwarded-proto': 'https' })).toBeUndefined();
    await restart({ HSTS_DAYS: '365', TRUST_PROXY_HOPS: '1' });
    expect(await told()).toBeUndefined();
    expect(await told({ 'x-forwarded-proto': 'http' })).toBeUndefined();
  });

  test('is given behind a proxy with TLS where the operator asks for it, and believed of no other', async () => {
    await restart({ HSTS_DAYS: '365', TRUST_PROXY_HOPS: '1' });
    expect(await told({ 'x-forwarded-proto': 'https' })).toBe('max-age=31536000');
    await restart({ HSTS_DAYS: '365' });
    expect(await told({ 'x-forwarded-proto': 'https' })).toBeUndefined();
  });
});
