// Coming back: after a reload, from a second page, after the server's own restart, and after leaving for good.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ROOMS_PATH, roomPath } from '../../shared-engine/protocol/paths.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import {
  ALONE,
  anyAnswer,
  deal,
  FRIENDS,
  isClosed,
  openRoom,
  ownView,
  playOn,
  post,
  sitDown,
  tableOfFour,
  takeSeat,
  ticketFor,
  watch,
} from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'returning' });
});
afterEach(() => server.stop());

const first = (peer: Peer) => anyAnswer(ownView(peer), { below: () => 0 });

describe('a reload', () => {
  test('RS1 returns to the same tiles and the own pass', async () => {
    const { guests, peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'reload', ({ stage }) => stage.phase === 'voting')));
    await peers[0]!.choose(first(peers[0]!));
    const before = ownView(peers[0]!);
    expect(before.answer).not.toBeNull();
    await peers[0]!.close();
    const again = await sitDown(server, guests[0]!);
    expect(ownView(again)).toEqual(before);
    expect(again.table.you).toBe(0);
  });

  test('RS3 brings the review again, and no longer after the next deal', async () => {
    const guest = await openRoom(server, ALONE);
    const peer = await sitDown(server, guest);
    await peer.untilTable((table) => table.round === 1);
    await playOn(peer, 'review again');
    const review = await peer.review();
    await peer.close();
    const again = await sitDown(server, guest);
    expect(await again.review()).toEqual(review);
    await deal([again]);
    await again.close();
    const later = await sitDown(server, guest);
    await later.roundTrip();
    expect(later.messages.filter(({ kind }) => kind === 'review')).toEqual([]);
  });

  test('PR1 is seen by the others as disconnected and connected again', async () => {
    const { guests, peers } = await tableOfFour(server);
    const present = (peer: Peer) => peer.table.seats.map((seat) => seat.kind === 'person' && seat.present);
    await peers[3]!.close();
    await peers[0]!.untilTable(() => present(peers[0]!)[3] === false, 'the absence');
    await sitDown(server, guests[3]!);
    await peers[0]!.untilTable(() => present(peers[0]!)[3] === true, 'the return');
  });
});

describe('a second page of the same person', () => {
  test('PR2 replaces the first, whose late end does no harm', async () => {
    const guest = await openRoom(server);
    const other = await watch(server, guest.code);
    const old = await sitDown(server, guest);
    const young = await sitDown(server, guest);
    expect(await old.ended).toBe(CLOSE.replaced);
    await Promise.all([young.roundTrip(), other.roundTrip()]);
    expect(other.table.seats[0]).toMatchObject({ present: true });
    expect(await young.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
    await young.close();
    await other.untilTable(({ seats }) => seats[0].kind === 'person' && !seats[0].present, 'the absence');
  });

  test('PR2 does not disturb anybody else’s', async () => {
    const { guests, peers } = await tableOfFour(server);
    await sitDown(server, guests[1]!);
    expect(await peers[1]!.ended).toBe(CLOSE.replaced);
    for (const peer of [peers[0]!, peers[2]!, peers[3]!]) {
      expect(await peer.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
    }
  });
});

describe('after a restart of the server on the same store', () => {
  test('E2 RS1 ID3 the round goes on where it was, with the same secrets, and a repeated command is known', async () => {
    const { guests, peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'restart', ({ stage }) => stage.phase === 'voting')));
    const answer = first(peers[2]!);
    expect(await peers[2]!.choose(answer, { id: 'kept' })).toMatchObject({ kind: 'ack' });
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    const before = peers.map(ownView);
    const { clock, store } = server;
    await server.stop();
    expect(await peers[0]!.ended).toBe(CLOSE.restarting);

    server = await startServer({ seed: 'second process', clock, store });
    const back: Peer[] = [];
    for (const guest of guests) back.push(await sitDown(server, guest));
    expect(back.map(ownView)).toEqual(before);
    expect(await back[2]!.choose(answer, { id: 'kept' })).toMatchObject({ kind: 'ack' });
    await Promise.all(back.map((peer) => playOn(peer, 'going on')));
    const reviews = await Promise.all(back.map((peer) => peer.review()));
    expect(reviews.map(({ review }) => review.seat)).toEqual([0, 1, 2, 3]);
  });

  test('RS3 a closed round’s review is made anew', async () => {
    const guest = await openRoom(server, ALONE);
    const peer = await sitDown(server, guest);
    await peer.untilTable((table) => table.round === 1);
    await playOn(peer, 'closed');
    const review = await peer.review();
    const { clock, store } = server;
    await server.stop();
    server = await startServer({ clock, store });
    expect(await (await sitDown(server, guest)).review()).toEqual(review);
  });
});

describe('two servers on one store', () => {
  test('ST1 never let the log of a room fork: who was slower decides anew', async () => {
    const other = await startServer({ seed: 'other node', clock: server.clock, store: server.store });
    const host = await openRoom(server);
    const guest = await takeSeat(server, host.code);
    const a = await sitDown(server, host);
    const b = await sitDown(other, guest);
    await Promise.all([a, b].map((peer) => peer.act({ kind: 'ready', ready: true })));
    await Promise.all([a, b].map((peer) => peer.act({ kind: 'ready', ready: false })));
    const log = (await eventsOf(server.store, host.code))!;
    expect(log.map(({ seq }) => seq)).toEqual(log.map((_, index) => index + 1));
    await other.stop();
  });
});

describe('leaving', () => {
  test('in the middle of a round hands the tiles to a bot, and the others finish', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    const { rack } = ownView(peers[1]!);
    expect(await peers[1]!.act({ kind: 'leave' })).toMatchObject({ kind: 'ack' });
    expect(peers[1]!.table.seats[1]).toMatchObject({ kind: 'bot' });
    const stayers = [peers[0]!, peers[2]!, peers[3]!];
    await Promise.all(stayers.map((peer) => playOn(peer, 'after leaving')));
    expect(stayers.every(isClosed)).toBe(true);
    expect(rack).toHaveLength(ownView(stayers[0]!).dealer === 1 ? 14 : 13);
  });

  test('RS5 makes the secret worthless, and the seat free for the next', async () => {
    const { code, guests, peers } = await tableOfFour(server);
    await peers[3]!.act({ kind: 'leave' });
    expect((await ticketFor(server, guests[3]!)).seat).toBeNull();
    const heir = await takeSeat(server, code, { name: 'Alba', seat: 3 });
    expect((await ticketFor(server, heir)).seat).toBe(3);
    expect((await ticketFor(server, guests[3]!)).seat).toBeNull();
  });

  test('RS5 makes a ticket that was issued before worthless', async () => {
    const { guests, peers } = await tableOfFour(server);
    const { ticket } = await ticketFor(server, guests[3]!);
    await peers[3]!.act({ kind: 'leave' });
    const late = await Peer.open(server.url);
    late.send({ kind: 'hello', id: 'h', versions: [1, 1], ticket });
    expect(await late.ended).toBe(CLOSE.ticketRejected);
  });
});

describe('a room with nobody in it', () => {
  /** Time goes by while somebody stays at another table. */
  async function hours(count: number, stays: Peer) {
    for (let beat = 0; beat < count * 360; beat++) {
      server.clock.advance(10_000);
      if (beat % 2 === 1) await stays.roundTrip();
    }
  }
  const statusOf = async (code: string) => (await fetch(`${server.url}${roomPath(code)}`)).status;

  test('RS7 leaves memory after ROOM_UNLOAD_MS and is found again, seats and all', async () => {
    await server.stop();
    server = await startServer({ settings: { ROOM_UNLOAD_MS: '3600000', MAX_ROOMS: '2' } });
    const left = await openRoom(server);
    const peer = await sitDown(server, await openRoom(server));
    expect((await post(`${server.url}${ROOMS_PATH}`, FRIENDS)).status).toBe(503);
    await hours(3, peer);
    await openRoom(server);
    expect(await statusOf(left.code)).toBe(200);
    expect((await sitDown(server, left)).table.you).toBe(0);
  });

  test('ST7 leaves the store after RETENTION_DAYS, and its code leads nowhere', async () => {
    await server.stop();
    server = await startServer({ settings: { ROOM_UNLOAD_MS: '3600000', RETENTION_DAYS: '1' } });
    const left = await openRoom(server);
    const stays = await sitDown(server, await openRoom(server));
    await hours(20, stays);
    await stays.act({ kind: 'ready', ready: true });
    await hours(6, stays);
    await expect.poll(() => statusOf(left.code)).toBe(404);
    expect(await server.store.count()).toBe(1);
    expect(await statusOf(stays.table.code)).toBe(200);
  });
});
