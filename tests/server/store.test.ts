// What a room says when its store fails.
import { expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { FakeClock } from '../kit/clock.ts';
import { deal, FRIENDS, openRoom, playOn, post, sitDown } from '../kit/http-client.ts';
import { newLog } from '../kit/logs.ts';
import { startServer } from '../kit/server.ts';

test('ST3 DL1 a command that cannot be stored is rejected, changes nothing, and may be sent again', async () => {
  const memory = memoryStore();
  let down = false;
  const store: Store = {
    ...memory,
    commit: async (batch) => {
      if (down) throw new Error('bam-1 cannot be written');
      return memory.commit(batch);
    },
  };
  const server = await startServer({ store });
  const peer = await sitDown(server, await openRoom(server, FRIENDS));
  const before = await memory.history(peer.table.code);
  down = true;
  expect(await peer.act({ kind: 'ready', ready: true }, 'again')).toMatchObject({ code: 'try-later' });
  await peer.roundTrip();
  expect(peer.table.seats[0]).toMatchObject({ ready: false });
  expect(await memory.history(peer.table.code)).toEqual(before);
  down = false;
  expect(await peer.act({ kind: 'ready', ready: true }, 'again')).toMatchObject({ kind: 'ack' });
  await peer.untilTable(({ round }) => round === 1, 'the deal');
  expect(server.logged.join('')).not.toContain('bam-1');
  await server.stop();
});

test('SC2 a scheduled action that cannot be stored is tried again a second later', async () => {
  const memory = memoryStore();
  let failures = 0;
  const store: Store = {
    ...memory,
    commit: async (batch) => {
      const dealt = batch.some(({ row }) => row.events.includes('"dealt"'));
      if (dealt && failures++ < 2) throw new Error('away');
      return memory.commit(batch);
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

test('ST3 a room is not opened while the store is away, and the page is told to try again', async () => {
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

test('ST7 a room that a restart left behind is removed after the time it is stored, and not before', async () => {
  const store = memoryStore();
  const clock = new FakeClock();
  const day = 24 * 60 * 60 * 1000;
  const openedAt = (days: number) => {
    const log = newLog();
    return { ...log, rows: log.rows.map((row) => ({ ...row, at: clock.now() - days * day })) };
  };
  await store.create('AAAA2222', openedAt(8));
  await store.create('BBBB2222', openedAt(6));
  const settings = { RETENTION_DAYS: '7', ROOM_UNLOAD_MS: '3600000' };
  const server = await startServer({ store, clock, settings });
  clock.advance(3_600_000);
  await expect.poll(() => store.codes(null, 9)).toEqual(['BBBB2222']);
  await server.stop();
});
