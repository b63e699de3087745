// What wake-ups between servers cost on a PostgreSQL, in processor time: heard, sent, asked for, and the sweep beside them.
import pg from 'pg';
import { systemClock } from '../../../server/clock.ts';
import { postgresStore } from '../../../server/store/postgres.ts';
import { openPool } from '../../../server/store/postgres-pool.ts';
import { postgresWakeBus } from '../../../server/store/wake-postgres.ts';
import { newLog } from '../../kit/logs.ts';
import { startPostgres, type TestPostgres } from '../../kit/postgres.ts';
import type { BenchInput } from '../bench.ts';
import { databaseCpu } from '../rooms/database-cpu.ts';

const CHANNEL = 'quadrille_wake';
const SWEEPS = 200;
/** Wake-ups in a full message. */
const FULL = 100;

interface Amounts {
  readonly messages: number;
  readonly listeners: number;
  readonly polls: number;
  readonly active: number;
  /** Logs in the database while it is swept. */
  readonly stored: number;
}

const AMOUNTS: Readonly<Record<BenchInput['size'], Amounts>> = {
  small: { messages: 500, listeners: 5, polls: 20, active: 500, stored: 20_000 },
  full: { messages: 5000, listeners: 17, polls: 200, active: 2000, stored: 500_000 },
};

/** Microseconds of processor time. */
export interface Costs {
  /** Of a server that hears a message, and each wake-up in it. */
  readonly message: number;
  readonly wake: number;
  /** Of the database, for a message and for each server that hears it. */
  readonly notify: number;
  readonly delivery: number;
  /** Of server and database, for each table in a question for versions. */
  readonly poll: number;
  readonly databasePoll: number;
  /** Of the database, each time that a server looks for logs that are too old or too many and finds none. */
  readonly sweep: number;
}

export async function wakeCosts(size: BenchInput['size']): Promise<Costs> {
  const amounts = AMOUNTS[size];
  const database = await startPostgres();
  try {
    return {
      ...(await heard(database, amounts)),
      ...(await sent(database, amounts)),
      ...(await polled(database, amounts)),
      ...(await swept(database, amounts)),
    };
  } finally {
    await database.discard();
  }
}

/** By a server's own bus: what one more wake-up in a message costs, and a message that comes alone, as most do. */
async function heard(
  database: TestPostgres,
  { messages }: Amounts,
): Promise<Pick<Costs, 'message' | 'wake'>> {
  const url = await database.newDatabase();
  const bus = postgresWakeBus(url, systemClock);
  const active = new Map<string, number>();
  let found = 0;
  bus.subscribe(({ code, version }) => {
    found++;
    active.set(code, version);
  });
  // As long as the bus connects, nothing is heard.
  for (; found === 0; await pause(20)) await notifyAtOnce(database, url, { messages: 1, wakes: 1 });
  await pause(200);
  const together = async (wakes: number) => {
    found = 0;
    return costOf(messages, async () => {
      await notifyAtOnce(database, url, { messages, wakes });
      while (found < messages * wakes) await pause(5);
    });
  };
  const client = new pg.Client(url);
  await client.connect();
  const oneByOne = () => costOf(messages, () => notifyOneByOne(client, messages));
  await together(1);
  const wake = ((await together(FULL)) - (await together(1))) / (FULL - 1);
  await oneByOne();
  const listening = await oneByOne();
  await bus.close();
  const deaf = await oneByOne();
  await client.end();
  return { wake, message: listening - deaf - wake };
}

/** Microseconds of processor time of this process, for each of so many messages. */
async function costOf(messages: number, run: () => Promise<void>): Promise<number> {
  const used = process.cpuUsage();
  await run();
  const { user, system } = process.cpuUsage(used);
  return (user + system) / messages;
}

async function notifyOneByOne(client: pg.Client, messages: number): Promise<void> {
  for (let n = 0; n < messages; n++) {
    await client.query('SELECT pg_notify($1, $2)', [CHANNEL, `[["ROOM0001",${n}]]`]);
  }
}

/** In one statement, so that this process has nothing to do but to hear it. */
async function notifyAtOnce(
  database: TestPostgres,
  url: string,
  { messages, wakes }: { readonly messages: number; readonly wakes: number },
): Promise<void> {
  await database.run(
    `SELECT pg_notify('${CHANNEL}', (
      SELECT json_agg(json_build_array('ROOM' || lpad((wake % 5000)::text, 4, '0'), message * ${FULL} + wake))::text
      FROM generate_series(1, ${wakes}) AS wake
    )) FROM generate_series(1, ${messages}) AS message`,
    url,
  );
}

/** Messages one by one, as servers send them, with one server that hears them and with several. */
async function sent(
  database: TestPostgres,
  { messages, listeners }: Amounts,
): Promise<Pick<Costs, 'notify' | 'delivery'>> {
  const url = await database.newDatabase();
  const clients: pg.Client[] = [];
  const listen = async () => {
    const client = new pg.Client(url);
    await client.connect();
    await client.query(`LISTEN ${CHANNEL}`);
    clients.push(client);
  };
  const cost = async (): Promise<number> => {
    const used = await databaseCpu(database);
    await notifyOneByOne(clients[0]!, messages);
    await pause(200);
    return (((await databaseCpu(database)) - used) * 1000) / messages;
  };
  await listen();
  const one = await cost();
  while (clients.length < listeners) await listen();
  const many = await cost();
  await Promise.all(clients.map((client) => client.end()));
  const delivery = (many - one) / (listeners - 1);
  return { delivery, notify: one - delivery };
}

/** The question that a server asks four times a second. */
async function polled(
  database: TestPostgres,
  { polls, active }: Amounts,
): Promise<Pick<Costs, 'poll' | 'databasePoll'>> {
  const opened = await openPool(await database.newDatabase());
  if (!opened.ok) throw new Error(opened.message);
  const store = postgresStore(opened.pool);
  const codes = Array.from({ length: active }, (_, n) => `ROOM${String(n).padStart(4, '0')}`);
  for (const code of codes) await store.create(code, newLog());
  for (let n = 0; n < 10; n++) await store.versions(codes);
  const [used, databaseUsed] = [process.cpuUsage(), await databaseCpu(database)];
  for (let n = 0; n < polls; n++) await store.versions(codes);
  const { user, system } = process.cpuUsage(used);
  const databaseMs = (await databaseCpu(database)) - databaseUsed;
  await store.close();
  return { poll: (user + system) / polls / active, databasePoll: (databaseMs * 1000) / polls / active };
}

/** What each server does once a minute: nothing is too old here, and nothing too many, whatever is stored. */
async function swept(database: TestPostgres, { stored }: Amounts): Promise<Pick<Costs, 'sweep'>> {
  const url = await database.newDatabase();
  const opened = await openPool(url);
  if (!opened.ok) throw new Error(opened.message);
  const store = postgresStore(opened.pool);
  await database.run(
    `INSERT INTO quadrille.log (code, kind, version, touched_at, bytes)
    SELECT 'ROOM' || log, 'room', 100, log * 5000::bigint, 5000 FROM generate_series(1, ${stored}) AS log;
    UPDATE quadrille.stored_bytes SET bytes = ${stored} * 5000::bigint;
    ANALYZE quadrille.log`,
    url,
  );
  const used = await databaseCpu(database);
  for (let n = 0; n < SWEEPS; n++) {
    await store.removeOlder({ rooms: 0, classes: 0 });
    await store.removeBeyond(Number.MAX_SAFE_INTEGER);
  }
  const ms = (await databaseCpu(database)) - used;
  await store.close();
  return { sweep: (ms * 1000) / SWEEPS };
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
