// What a room says when its store fails.
import { expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { FakeClock } from '../kit/clock.ts';
import { deal, FRIENDS, openRoom, playOn, post, sitDown } from '../kit/http-client.ts';
import { opening } from '../kit/logs.ts';
import { startServer } from '../kit/server.ts';

test('a command that cannot be kept is refused, changes nothing, and may be sent again', async () => {
  const kept = memoryStore();
  let down = false;
  const store: Store = {
    ...kept,
    append: async (...args) => {
      if (down) throw new Error('bam-1 cannot be written');
      return kept.append(...args);
    },
  };
  const server = await startServer({ store });
  const peer = await sitDown(server, await openRoom(server, FRIENDS));
  const before = await kept.load(peer.table.code);
  down = true;
  expect(await peer.act({ kind: 'ready', ready: true }, 'again')).toMatchObject({ code: 'try-later' });
  await peer.roundTrip();
  expect(peer.table.seats[0]).toMatchObject({ ready: false });
  expect(await kept.load(peer.table.code)).toEqual(before);
  down = false;
  expect(await peer.act({ kind: 'ready', ready: true }, 'again')).toMatchObject({ kind: 'ack' });
  await peer.untilTable(({ round }) => round === 1, 'the deal');
  expect(server.logged.join('')).not.toContain('bam-1');
  await server.stop();
});

test('a duty of the house that cannot be kept is tried again a second later', async () => {
  const kept = memoryStore();
  let failures = 0;
  const store: Store = {
    ...kept,
    append: async (code, after, log) => {
      const dealt = log.some(({ event }) => event.kind === 'round' && event.event.kind === 'dealt');
      if (dealt && failures++ < 2) throw new Error('away');
      return kept.append(code, after, log);
    },
  };
  const server = await startServer({ store });
  const peer = await sitDown(server, await openRoom(server, FRIENDS));
  await peer.act({ kind: 'ready', ready: true });
  for (let attempt = 1; attempt <= 2; attempt++) {
    await expect.poll(() => failures).toBe(attempt);
    await peer.roundTrip();
    expect(peer.table.round).toBe(0);
    server.clock.advance(1000);
  }
  await peer.untilTable(({ round }) => round === 1, 'the deal');
  await playOn(peer, 'after the failure');
  await deal([peer]);
  await server.stop();
});

test('a room is not opened by a store that is away, and the page is told to try again', async () => {
  const store: Store = {
    ...memoryStore(),
    create: async () => {
      throw new Error('away');
    },
    load: async () => {
      throw new Error('away');
    },
  };
  const server = await startServer({ store });
  const opening = await post(`${server.url}/api/rooms`, FRIENDS);
  expect([opening.status, (await opening.json()).code]).toEqual([503, 'try-later']);
  expect(opening.headers.get('set-cookie')).toBeNull();
  const lobby = await fetch(`${server.url}/api/rooms/AAAA2222`);
  expect([lobby.status, (await lobby.json()).code]).toEqual([503, 'try-later']);
  await server.stop();
});

test('a room that a restart left behind is removed after the time it is kept, and not before', async () => {
  const store = memoryStore();
  const clock = new FakeClock();
  const day = 24 * 60 * 60 * 1000;
  const openedAt = (days: number) => opening().map((event) => ({ ...event, at: clock.now() - days * day }));
  await store.create('AAAA2222', openedAt(8));
  await store.create('BBBB2222', openedAt(6));
  const settings = { KEEP_DAYS: '7', IDLE_MS: '3600000' };
  const server = await startServer({ store, clock, settings });
  clock.advance(3_600_000);
  await expect.poll(() => store.codes(null, 9)).toEqual(['BBBB2222']);
  await server.stop();
});
