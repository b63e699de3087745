// Faults of two servers on one PostgreSQL: database down, server killed or frozen, wake-ups lost, clocks apart.
import { postgresStore } from '../../../server/store/postgres.ts';
import { openPool } from '../../../server/store/postgres-pool.ts';
import { type SilentWay, wayTo } from '../../kit/blackhole-proxy.ts';
import { startPostgres, type TestPostgres } from '../../kit/postgres.ts';
import { Crowd, type CrowdOptions } from './crowd.ts';
import type { ProofInput, Result, Scenario } from './scenario.ts';
import { pause, type ServerUnderTest, serverUnderTest } from './server-under-test.ts';

interface DatabaseScene {
  readonly servers: readonly [ServerUnderTest, ServerUnderTest];
  readonly crowd: Crowd;
  readonly postgres: TestPostgres;
  readonly url: string;
  /** What the servers reach the database over. */
  readonly way: SilentWay;
}

/** A module, preloaded, that shifts the clock of a process by so many milliseconds. */
function shiftedClock(ms: number): string {
  const code = `
    const origin = performance.timeOrigin + ${ms};
    Object.defineProperty(performance, 'timeOrigin', { get: () => origin });
    const now = Date.now;
    Date.now = () => now() + ${ms};`;
  return `data:text/javascript,${encodeURIComponent(code)}`;
}

/** Two servers on a new database, the seats of every room spread over both. */
export async function withDatabase(
  { seed, size }: ProofInput,
  wish: Partial<CrowdOptions>,
  disturb: (place: DatabaseScene) => Promise<number>,
  clocks: readonly [number, number] = [0, 0],
): Promise<Result> {
  const postgres = await startPostgres();
  const url = await postgres.newDatabase();
  const way = await wayTo(postgres.port);
  const settings = { DATABASE_URL: url.replace(`:${postgres.port}/`, `:${way.port}/`) };
  const servers = [
    await serverUnderTest(settings, size, clocks[0] === 0 ? null : shiftedClock(clocks[0])),
    await serverUnderTest(settings, size, clocks[1] === 0 ? null : shiftedClock(clocks[1])),
  ] as const;
  try {
    await Promise.all(servers.map((server) => server.start()));
    const rooms = size === 'full' ? 4 : 2;
    const urls = servers.map((server) => server.url);
    const crowd = await Crowd.gather({ rooms, urls, seed, maxThinkingMs: 120, deadline: 15, ...wish });
    const happened = await disturb({ servers, crowd, postgres, url, way });
    const healedAt = performance.now();
    const opened = await openPool(url);
    if (!opened.ok) throw new Error(opened.message);
    const verdict = await crowd.finish(postgresStore(opened.pool), healedAt);
    await opened.pool.end();
    return { happened, verdict };
  } finally {
    await Promise.all(servers.map((server) => server.end('SIGKILL')));
    await way.close();
    await postgres.discard();
  }
}

export const databaseDown: Scenario = {
  title: 'the database is gone, and the servers say that they cannot store anything',
  run: (input) =>
    withDatabase(input, {}, async ({ crowd, postgres }) => {
      await pause(1500);
      await postgres.stop('SIGQUIT');
      await pause(input.size === 'full' ? 30_000 : 5000);
      await postgres.start();
      return crowd.storageWarnings;
    }),
};

export const serverKilled: Scenario = {
  title: 'one of two servers killed, its people move to the other',
  run: (input) =>
    withDatabase(input, {}, async ({ servers, crowd }) => {
      const times = input.size === 'full' ? 20 : 2;
      for (let at = 0; at < times; at++) {
        const server = servers[at % 2 === 0 ? 0 : 1];
        await pause(500 + crowd.random.below(1000));
        await server.end('SIGKILL');
        await pause(crowd.random.below(4000));
        await server.start();
      }
      return times;
    }),
};

export const serverFrozen: Scenario = {
  title: 'one of two servers frozen for a while',
  run: (input) =>
    withDatabase(input, {}, async ({ servers, crowd }) => {
      await pause(1000);
      const before = played(crowd);
      servers[0].signal('SIGSTOP');
      await pause(input.size === 'full' ? 60_000 : 9000);
      servers[0].signal('SIGCONT');
      // The other server must have carried on alone.
      return played(crowd) > before ? 1 : 0;
    }),
};

export const wakeUpsLost: Scenario = {
  title: 'wake-ups lost, their connections cut again and again',
  run: (input) =>
    withDatabase(input, {}, async ({ postgres, url }) => {
      let cut = 0;
      const end = performance.now() + (input.size === 'full' ? 30_000 : 4000);
      while (performance.now() < end) {
        const { rows } = await postgres.run(
          `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
          WHERE query LIKE 'LISTEN%' OR query LIKE 'SELECT pg_notify%'`,
          url,
        );
        cut += rows.length;
        await pause(150);
      }
      return cut;
    }),
};

export const clocksApart: Scenario = {
  title: 'the servers’ clocks two hours apart',
  run: (input) =>
    withDatabase(
      input,
      {},
      async ({ servers, crowd }) => {
        const before = played(crowd);
        await pause(input.size === 'full' ? 30_000 : 4000);
        await servers[1].end('SIGKILL');
        await pause(500);
        await servers[1].start();
        return played(crowd) - before;
      },
      [3_600_000, -3_600_000],
    ),
};

/** Choices acknowledged in all rooms so far. */
function played(crowd: Crowd): number {
  const ordered = crowd.players.flatMap((one) => [...one.sent.values()]);
  return ordered.filter(({ answers }) => answers.some(({ code }) => code === 'ack')).length;
}
