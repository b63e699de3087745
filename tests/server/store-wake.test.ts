// Wake-ups between servers, the store that sends them, and the safety net under them.
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { systemClock } from '../../server/clock.ts';
import type { Wake, WakeBus } from '../../server/ports.ts';
import { POLL_MS, watchVersions } from '../../server/registry/version-watch.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { publishingStore } from '../../server/store/publishing-store.ts';
import { memoryWakeHub } from '../../server/store/wake-memory.ts';
import { MAX_WAKES, PAUSE_MS, postgresWakeBus } from '../../server/store/wake-postgres.ts';
import { FakeClock } from '../kit/clock.ts';
import { appendTo, newLog, row } from '../kit/logs.ts';
import { startPostgres, type TestPostgres } from '../kit/postgres.ts';

const CODE = 'ABCDEFGH';

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres.discard());

function receivedBy(bus: WakeBus): Wake[] {
  const received: Wake[] = [];
  bus.subscribe((wake) => received.push(wake));
  return received;
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
      return { one: postgresWakeBus(url, systemClock), other: postgresWakeBus(url, systemClock) };
    },
  ],
];

describe.each(KINDS)('wake-ups through %s', (_, join) => {
  test('a wake-up reaches every server, the sender too, with the room and its last number', async () => {
    const { one, other } = await join();
    const [atOne, atOther] = [receivedBy(one), receivedBy(other)];
    await untilHeard(one, atOther, { code: CODE, version: 7 });
    await untilHeard(other, atOne, { code: 'it\'s "odd" 麻雀', version: 8 });
    expect(atOne).toContainEqual({ code: CODE, version: 7 });
    await Promise.all([one.close(), other.close()]);
  });

  test('wake-ups end for a listener that has left and for a bus that is closed', async () => {
    const { one, other } = await join();
    const stays = receivedBy(other);
    const left: Wake[] = [];
    const leave = other.subscribe((wake) => left.push(wake));
    const closed = receivedBy(one);
    await untilHeard(one, stays, { code: CODE, version: 1 });
    leave();
    leave();
    await one.close();
    const before = [left.length, closed.length];
    one.publish({ code: CODE, version: 2 });
    await untilHeard(other, stays, { code: CODE, version: 3 });
    expect([left.length, closed.length]).toEqual(before);
    expect(stays).not.toContainEqual({ code: CODE, version: 2 });
    await other.close();
  });
});

describe('the bus through PostgreSQL', () => {
  test('the bus carries hundreds of rooms at once, each with its highest number', async () => {
    const url = await postgres.newDatabase();
    const [one, other] = [postgresWakeBus(url, systemClock), postgresWakeBus(url, systemClock)];
    const heard = receivedBy(other);
    await untilHeard(one, heard, { code: CODE, version: 1 });
    const codes = Array.from({ length: 500 }, (_, at) => `ROOM${at}`);
    for (const version of [1, 3, 2]) for (const code of codes) one.publish({ code, version });
    await expect.poll(() => new Set(heard.map(({ code }) => code)).size).toBe(501);
    await expect.poll(() => heard.filter(({ version }) => version === 3).length).toBe(500);
    await Promise.all([one.close(), other.close()]);
  });

  test('DL7 the bus sends at once and then pauses unless the message was full; what gathers goes into the next', async () => {
    const url = await postgres.newDatabase();
    const pauses: { readonly ms: number; readonly end: () => void }[] = [];
    const clock = {
      now: () => 0,
      after(ms: number, end: () => void) {
        pauses.push({ ms, end });
        return () => {};
      },
    };
    const bus = postgresWakeBus(url, clock);
    const heard = receivedBy(bus);
    const notify = (payload: unknown) =>
      postgres.run(`SELECT pg_notify('quadrille_wake', '${JSON.stringify(payload)}')`, url);
    await expect
      .poll(async () => {
        await notify([[CODE, 1]]);
        return heard.length;
      })
      .toBeGreaterThan(0);
    const listener = new pg.Client(url);
    await listener.connect();
    await listener.query('LISTEN quadrille_wake');
    const messages: unknown[] = [];
    listener.on('notification', ({ payload = '' }) => messages.push(JSON.parse(payload)));

    bus.publish({ code: CODE, version: 2 });
    await expect.poll(() => pauses.map(({ ms }) => ms)).toEqual([PAUSE_MS]);
    bus.publish({ code: CODE, version: 3 });
    bus.publish({ code: 'OTHEROOM', version: 7 });
    bus.publish({ code: CODE, version: 4 });
    // Whatever was sent by now is heard before this.
    await notify('mark');
    await expect.poll(() => messages).toEqual([[[CODE, 2]], 'mark']);
    pauses[0]!.end();
    await expect.poll(() => pauses.length).toBe(2);
    const gathered = [
      [CODE, 4],
      ['OTHEROOM', 7],
    ];
    await expect.poll(() => messages.slice(2)).toEqual([gathered]);

    for (let n = 0; n < MAX_WAKES; n++) bus.publish({ code: `ROOM${n}`, version: 1 });
    pauses[1]!.end();
    await expect.poll(() => messages.length).toBe(4);
    bus.publish({ code: CODE, version: 5 });
    await expect.poll(() => messages.slice(4)).toEqual([[[CODE, 5]]]);
    await expect.poll(() => pauses.length).toBe(3);
    await Promise.all([bus.close(), listener.end()]);
  });

  test('the bus connects again after the database has ended every connection', async () => {
    const url = await postgres.newDatabase();
    const [one, other] = [postgresWakeBus(url, systemClock), postgresWakeBus(url, systemClock)];
    const heard = receivedBy(other);
    await untilHeard(one, heard, { code: CODE, version: 1 });
    await postgres.run(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
      WHERE application_name = 'quadrille' AND datname = current_database()`,
      url,
    );
    await untilHeard(one, heard, { code: CODE, version: 2 });
    await untilHeard(other, heard, { code: CODE, version: 3 });
    await Promise.all([one.close(), other.close()]);
  });

  test('a bus without a database loses wake-ups in silence and can be closed', async () => {
    const bus = postgresWakeBus('postgres://127.0.0.1:1/none', systemClock, 300);
    bus.publish({ code: CODE, version: 1 });
    await bus.close();
    expect(receivedBy(bus)).toEqual([]);
  });

  test('the bus ignores a notification that is no wake-up', async () => {
    const url = await postgres.newDatabase();
    const bus = postgresWakeBus(url, systemClock);
    const heard = receivedBy(bus);
    await untilHeard(bus, heard, { code: CODE, version: 1 });
    for (const rubbish of ['', '{', '{"code":1}', '[["ABCDEFGH","1"]]', '[[null,1]]']) {
      await postgres.run(`SELECT pg_notify('quadrille_wake', '${rubbish}')`, url);
    }
    await untilHeard(bus, heard, { code: CODE, version: 2 });
    expect(new Set(heard.map(({ version }) => version))).toEqual(new Set([1, 2]));
    await bus.close();
  });
});

test('a publishing store tells of the appends that are committed, and of nothing else', async () => {
  const told: Wake[] = [];
  const bus: WakeBus = {
    publish: (wake) => told.push(wake),
    subscribe: () => () => {},
    close: async () => {},
  };
  const store = publishingStore(memoryStore(), bus);
  await store.create(CODE, newLog());
  await store.create('OTHEROOM', newLog());
  await appendTo(store, CODE, row(1, 3));
  await appendTo(store, CODE, row(2));
  await store.commit([
    { code: CODE, row: { ...row(4), version: 4 }, snapshot: null },
    { code: 'NOSUCHRM', row: row(1), snapshot: null },
    { code: 'OTHEROOM', row: row(1), snapshot: null },
  ]);
  expect(told).toEqual([
    { code: CODE, version: 4 },
    { code: 'OTHEROOM', version: 2 },
  ]);
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
      active: () => new Map(Object.entries(rooms)),
      behind: (wake) => seen.push(wake),
      removed: (code) => seen.push({ removed: code }),
      reachable: (yes) => seen.push({ reachable: yes }),
    });
    const turn = async () => {
      clock.advance(POLL_MS);
      await new Promise((resolve) => setImmediate(resolve));
    };
    return { store, seen, stop, turn, asked: () => asked, setAway: (yes: boolean) => (away = yes) };
  }

  test('the poll finds rooms that went on elsewhere and rooms that were removed, though no wake-up came', async () => {
    const net = watching({ ROOMAAAA: 1, ROOMBBBB: 1, ROOMCCCC: 4 });
    await net.store.create('ROOMAAAA', newLog());
    await net.store.create('ROOMBBBB', newLog(5));
    await net.turn();
    expect(net.seen).toEqual([{ code: 'ROOMBBBB', version: 6 }, { removed: 'ROOMCCCC' }]);
    net.stop();
  });

  test('the poll tells once that the store is away and once that it is back', async () => {
    const net = watching({ ROOMAAAA: 1 });
    await net.store.create('ROOMAAAA', newLog(1));
    net.setAway(true);
    for (let turn = 0; turn < 3; turn++) await net.turn();
    net.setAway(false);
    for (let turn = 0; turn < 2; turn++) await net.turn();
    const behind = { code: 'ROOMAAAA', version: 2 };
    expect(net.seen).toEqual([{ reachable: false }, { reachable: true }, behind, behind]);
    net.stop();
  });

  test('the poll asks nothing without a room and nothing when it is stopped', async () => {
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
