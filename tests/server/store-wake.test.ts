// Wake-ups between servers, the store that sends them, and the safety net under them.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Wake, WakeBus } from '../../server/ports.ts';
import { announcing } from '../../server/store/announcing.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { WATCH_MS, watchVersions } from '../../server/store/version-watch.ts';
import { memoryWakeHub } from '../../server/store/wake-memory.ts';
import { postgresWakeBus } from '../../server/store/wake-postgres.ts';
import { FakeClock } from '../kit/clock.ts';
import { following, opening } from '../kit/logs.ts';
import { startPostgres, type TestPostgres } from '../kit/postgres.ts';

const CODE = 'ABCDEFGH';

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres.discard());

function heardBy(bus: WakeBus): Wake[] {
  const heard: Wake[] = [];
  bus.subscribe((wake) => heard.push(wake));
  return heard;
}

/** Sends until the other side hears: a wake-up may be lost while a connection is being made. */
async function untilHeard(from: WakeBus, heard: readonly Wake[], wake: Wake): Promise<void> {
  await expect
    .poll(
      () => {
        from.publish(wake);
        return heard;
      },
      { timeout: 20_000 },
    )
    .toContainEqual(wake);
}

interface Pair {
  readonly one: WakeBus;
  readonly other: WakeBus;
}

const KINDS: readonly (readonly [string, () => Promise<Pair>])[] = [
  [
    'memory',
    async () => {
      const hub = memoryWakeHub();
      return { one: hub.join(), other: hub.join() };
    },
  ],
  [
    'PostgreSQL',
    async () => {
      const url = await postgres.newDatabase();
      return { one: postgresWakeBus(url), other: postgresWakeBus(url) };
    },
  ],
];

describe.each(KINDS)('wake-ups through %s', (_, join) => {
  test('reach every server, the sender too, with the room and its last number', async () => {
    const { one, other } = await join();
    const [atOne, atOther] = [heardBy(one), heardBy(other)];
    await untilHeard(one, atOther, { code: CODE, seq: 7 });
    await untilHeard(other, atOne, { code: 'it\'s "odd" 麻雀', seq: 8 });
    expect(atOne).toContainEqual({ code: CODE, seq: 7 });
    await Promise.all([one.close(), other.close()]);
  });

  test('end for a listener that has left and for a bus that is closed', async () => {
    const { one, other } = await join();
    const stays = heardBy(other);
    const left: Wake[] = [];
    const leave = other.subscribe((wake) => left.push(wake));
    const closed = heardBy(one);
    await untilHeard(one, stays, { code: CODE, seq: 1 });
    leave();
    leave();
    await one.close();
    const before = [left.length, closed.length];
    one.publish({ code: CODE, seq: 2 });
    await untilHeard(other, stays, { code: CODE, seq: 3 });
    expect([left.length, closed.length]).toEqual(before);
    expect(stays).not.toContainEqual({ code: CODE, seq: 2 });
    await other.close();
  });
});

describe('the bus through PostgreSQL', () => {
  test('carries hundreds of rooms at once, each with its highest number', async () => {
    const url = await postgres.newDatabase();
    const [one, other] = [postgresWakeBus(url), postgresWakeBus(url)];
    const heard = heardBy(other);
    await untilHeard(one, heard, { code: CODE, seq: 1 });
    const codes = Array.from({ length: 500 }, (_, at) => `ROOM${at}`);
    for (const seq of [1, 3, 2]) for (const code of codes) one.publish({ code, seq });
    await expect.poll(() => new Set(heard.map(({ code }) => code)).size).toBe(501);
    await expect.poll(() => heard.filter(({ seq }) => seq === 3).length).toBe(500);
    await Promise.all([one.close(), other.close()]);
  });

  test('finds its way back after the database has ended every connection', async () => {
    const url = await postgres.newDatabase();
    const [one, other] = [postgresWakeBus(url), postgresWakeBus(url)];
    const heard = heardBy(other);
    await untilHeard(one, heard, { code: CODE, seq: 1 });
    await postgres.run(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
      WHERE application_name = 'quadrille' AND datname = current_database()`,
      url,
    );
    await untilHeard(one, heard, { code: CODE, seq: 2 });
    await untilHeard(other, heard, { code: CODE, seq: 3 });
    await Promise.all([one.close(), other.close()]);
  });

  test('without a database loses wake-ups in silence and can be closed', async () => {
    const bus = postgresWakeBus('postgres://127.0.0.1:1/none', 300);
    bus.publish({ code: CODE, seq: 1 });
    await bus.close();
    expect(heardBy(bus)).toEqual([]);
  });

  test('overlooks what is no wake-up', async () => {
    const url = await postgres.newDatabase();
    const bus = postgresWakeBus(url);
    const heard = heardBy(bus);
    await untilHeard(bus, heard, { code: CODE, seq: 1 });
    for (const rubbish of ['', '{', '{"code":1}', '[["ABCDEFGH","1"]]', '[[null,1]]']) {
      await postgres.run(`SELECT pg_notify('quadrille_wake', '${rubbish}')`, url);
    }
    await untilHeard(bus, heard, { code: CODE, seq: 2 });
    expect(new Set(heard.map(({ seq }) => seq))).toEqual(new Set([1, 2]));
    await bus.close();
  });
});

test('a store tells of what is kept, and of nothing else', async () => {
  const told: Wake[] = [];
  const bus: WakeBus = {
    publish: (wake) => told.push(wake),
    subscribe: () => () => {},
    close: async () => {},
  };
  const store = announcing(memoryStore(), bus);
  await store.create(CODE, opening());
  await store.append(CODE, 1, following(1, 3, 'c1'));
  await store.append(CODE, 2, following(2));
  await store.append(CODE, 4, following(4, 1, 'c1'));
  await store.append(CODE, 1, []).catch(() => undefined);
  expect(told).toEqual([{ code: CODE, seq: 4 }]);
});

describe('the safety net', () => {
  function watching(rooms: Record<string, number>) {
    const store = memoryStore();
    const clock = new FakeClock();
    const seen: unknown[] = [];
    let away = false;
    let asked = 0;
    const stop = watchVersions({
      store: {
        async versions(codes) {
          asked++;
          if (away) throw new Error('away');
          return store.versions(codes);
        },
      },
      clock,
      local: () => new Map(Object.entries(rooms)),
      behind: (wake) => seen.push(wake),
      gone: (code) => seen.push({ gone: code }),
      reachable: (yes) => seen.push({ reachable: yes }),
    });
    const turn = async () => {
      clock.advance(WATCH_MS);
      await new Promise((resolve) => setImmediate(resolve));
    };
    return { store, seen, stop, turn, asked: () => asked, setAway: (yes: boolean) => (away = yes) };
  }

  test('finds rooms that went on elsewhere and rooms that are gone, though no wake-up came', async () => {
    const net = watching({ ROOMAAAA: 1, ROOMBBBB: 1, ROOMCCCC: 4 });
    await net.store.create('ROOMAAAA', opening());
    await net.store.create('ROOMBBBB', opening(5));
    await net.turn();
    expect(net.seen).toEqual([{ code: 'ROOMBBBB', seq: 6 }, { gone: 'ROOMCCCC' }]);
    net.stop();
  });

  test('tells once that the store is away and once that it is back', async () => {
    const net = watching({ ROOMAAAA: 1 });
    await net.store.create('ROOMAAAA', opening(1));
    net.setAway(true);
    for (let turn = 0; turn < 3; turn++) await net.turn();
    net.setAway(false);
    for (let turn = 0; turn < 2; turn++) await net.turn();
    const behind = { code: 'ROOMAAAA', seq: 2 };
    expect(net.seen).toEqual([{ reachable: false }, { reachable: true }, behind, behind]);
    net.stop();
  });

  test('asks nothing without a room and nothing when it is stopped', async () => {
    const idle = watching({});
    await idle.turn();
    expect(idle.asked()).toBe(0);
    idle.stop();
    const busy = watching({ ROOMAAAA: 1 });
    await busy.turn();
    busy.stop();
    busy.stop();
    await busy.turn();
    expect(busy.asked()).toBe(1);
  });
});
