// Two servers on one store: seats of one room on different servers, wake-ups that come or do not, a store that goes away.
import { afterEach, describe, expect, test } from 'vitest';
import { POLL_MS } from '../../server/registry/version-watch.ts';
import { replayRoom } from '../../server/room/room.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import {
  deal,
  FRIENDS,
  isClosed,
  openRoom,
  playOn,
  sitDown,
  takeSeat,
  ticketFor,
} from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import type { TestServer } from '../kit/server.ts';
import { type Faults, startTwoServers } from '../kit/two-servers.ts';

const started: TestServer[] = [];
afterEach(async () => {
  await Promise.all(started.splice(0).map((server) => server.stop()));
});

async function twoServers(faults: Faults = {}) {
  const both = await startTwoServers(faults);
  started.push(both.here, both.there);
  return both;
}

/** Ines at the first server, Tomas at the second, bots between them. */
async function tableAcross(faults: Faults = {}) {
  const both = await twoServers(faults);
  const host = await openRoom(both.here, { ...FRIENDS, bots: ['casual', null, 'casual'] });
  const ines = await sitDown(both.here, host);
  const guest = await takeSeat(both.there, host.code);
  const tomas = await sitDown(both.there, guest);
  return { ...both, code: host.code, host, guest, ines, tomas };
}

describe('one room on two servers', () => {
  test('PR1 shows at one of them who sits down at the other', async () => {
    const { ines, guest } = await tableAcross();
    await ines.untilTable(({ seats }) => seats[guest.seat].kind === 'person', 'Tomas');
  });

  test('ST1 ID5 is dealt once and played to its close from both, and the log is one', async () => {
    const { ines, tomas, rooms, code, here } = await tableAcross();
    const peers = [ines, tomas];
    await deal(peers);
    expect(tomas.table.view?.commitment).toBe(ines.table.view?.commitment);
    await Promise.all(peers.map((peer, at) => playOn(peer, `across ${at}`)));
    for (const peer of peers) expect(isClosed(peer)).toBe(true);
    const log = (await eventsOf(rooms, code))!;
    expect(log.map(({ seq }) => seq)).toEqual(log.map((_, index) => index + 1));
    const dealt = log.filter(({ event }) => event.kind === 'round' && event.event.kind === 'dealt');
    expect(dealt).toHaveLength(1);
    expect(replayRoom(log)?.play?.round.phase).toBe('closed');
    expect(here.logged.join('')).not.toContain('a duty of the house failed');
  });

  test('DL7 finds what a lost wake-up would have told at the next question', async () => {
    const { here, there, clock } = await twoServers({ deaf: true });
    const host = await openRoom(here, FRIENDS);
    const ines = await sitDown(here, host);
    const guest = await takeSeat(there, host.code);
    await ines.roundTrip();
    expect(ines.table.seats[guest.seat].kind).toBe('empty');
    clock.advance(POLL_MS);
    await ines.untilTable(({ seats }) => seats[guest.seat].kind === 'person', 'Tomas');
  });

  test('DL7 has a seat taken at one of them good at the other at once, whatever became of the wake-up', async () => {
    const { here, there } = await twoServers({ deaf: true });
    const host = await openRoom(here, FRIENDS);
    const ines = await sitDown(here, host);
    const guest = await takeSeat(there, host.code);
    const tomas = await sitDown(here, guest);
    expect(tomas.table.you).toBe(guest.seat);
    expect(ines.table.seats[guest.seat].kind).toBe('person');
  });

  test('ST1 decides a command from a server that is behind anew on what the other has written', async () => {
    const { here, there } = await twoServers({ deaf: true });
    const host = await openRoom(here, FRIENDS);
    const ines = await sitDown(here, host);
    const guest = await takeSeat(there, host.code);
    expect(ines.table.seats[guest.seat].kind).toBe('empty');
    const bot = { kind: 'seat-bot', seat: guest.seat, style: 'casual' } as const;
    expect(await ines.act(bot)).toMatchObject({ kind: 'rejected', code: 'seat-taken' });
    expect(ines.table.seats[guest.seat].kind).toBe('person');
    expect((await ticketFor(there, guest)).seat).toBe(guest.seat);
  });

  test('a room that is removed at one server closes its connections at the other', async () => {
    const { tomas, rooms, code, clock } = await tableAcross();
    await rooms.remove(code);
    clock.advance(POLL_MS);
    expect(await tomas.ended).toBe(CLOSE.goingAway);
  });
});

test('ST5 a server whose store is away rejects and says so; when it is back, it goes on', async () => {
  const faults: Faults = {};
  const { ines, here, clock } = await tableAcross(faults);
  faults.away = true;
  clock.advance(POLL_MS);
  await ines.until('the word that nothing can be kept', (m) => m.kind === 'storage' && !m.writable);
  expect(await ines.act({ kind: 'ready', ready: true }, 'once')).toMatchObject({ code: 'try-later' });
  await expect.poll(() => here.logged.filter((line) => line.includes('the store is away'))).toHaveLength(1);
  faults.away = false;
  await expect
    .poll(() => {
      clock.advance(POLL_MS);
      return here.logged.filter((line) => line.includes('the store answers again'));
    })
    .toHaveLength(1);
  await ines.until('the word that it keeps again', (m) => m.kind === 'storage' && m.writable);
  expect(await ines.act({ kind: 'ready', ready: true }, 'once')).toMatchObject({ kind: 'ack' });
});

test('ID6 what a server that stood still reads over a replaced connection is not carried out once more', async () => {
  const { ines, host, there, rooms, code } = await tableAcross({ deaf: true });
  const seatBot = (nth: number) =>
    ({ kind: 'seat-bot', seat: 1, style: nth % 2 === 0 ? 'strong' : 'casual' }) as const;
  const moved = await sitDown(there, host);
  expect(await moved.act(seatBot(0), 'late')).toMatchObject({ kind: 'ack' });
  // More than the ids that are remembered of one person, and fewer frames than a socket may send at once.
  for (let nth = 1; nth <= 35; nth++) expect(await moved.act(seatBot(nth))).toMatchObject({ kind: 'ack' });
  const before = await eventsOf(rooms, code);
  ines.send({ kind: 'action', id: 'late', action: seatBot(0) });
  expect(await ines.ended).toBe(CLOSE.replaced);
  expect(await eventsOf(rooms, code)).toEqual(before);
});
