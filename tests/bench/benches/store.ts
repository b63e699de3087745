// How many events a second the SQLite file and PostgreSQL store durably, one room and many, beside memory.
import path from 'node:path';
import { Committer } from '../../../server/aggregate/committer.ts';
import type { Append, Store } from '../../../server/ports.ts';
import { memoryStore } from '../../../server/store/memory.ts';
import { postgresStore } from '../../../server/store/postgres.ts';
import { openPool } from '../../../server/store/postgres-pool.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { newLog, row, storeOf } from '../../kit/logs.ts';
import { startPostgres } from '../../kit/postgres.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import type { Bench, Figures } from '../bench.ts';

/** How long each measurement runs, in milliseconds. */
const SPAN = 1500;

export const bench: Bench = {
  summary:
    'Events a second that a store makes durable, one append an event: one room, 64 rooms, 1,000 rooms.',
  async run() {
    const { folder, discard } = await temporaryFolder();
    const sqlite = storeOf(openSqlite(path.join(folder, 'quadrille.db')));
    const database = await startPostgres({ durable: true });
    const opened = await openPool(await database.newDatabase());
    if (!opened.ok) throw new Error(opened.message);
    const postgres = postgresStore(opened.pool);
    const figures = {
      ...(await measure('sqlite', sqlite)),
      ...(await measure('postgres', postgres)),
      ...(await measure('memory', memoryStore())),
    };
    await Promise.all([sqlite.close(), postgres.close()]);
    await Promise.all([discard(), database.discard()]);
    return figures;
  },
};

async function measure(name: string, store: Store): Promise<Figures> {
  const figures: Record<string, number> = {};
  for (const rooms of [1, 64, 1000]) {
    const waits: number[] = [];
    const codes = Array.from({ length: rooms }, (_, room) => `${rooms}-${room}`);
    await Promise.all(codes.map((code) => store.create(code, newLog())));
    const committer = new Committer(store);
    const started = performance.now();
    await Promise.all(codes.map((code) => keepBusy(committer, code, started + SPAN, waits)));
    const seconds = (performance.now() - started) / 1000;
    waits.sort((a, b) => a - b);
    figures[`${name}_${rooms}_rooms_events_per_s`] = Math.round(waits.length / seconds);
    figures[`${name}_${rooms}_rooms_p50_ms`] = rounded(waits[Math.floor(waits.length * 0.5)]!);
    figures[`${name}_${rooms}_rooms_p99_ms`] = rounded(waits[Math.floor(waits.length * 0.99)]!);
  }
  return figures;
}

/** Appends one event after the other to one room, each with a command as a seat would send it. */
async function keepBusy(committer: Committer, code: string, until: number, waits: number[]): Promise<void> {
  for (let last = 1; performance.now() < until; last++) {
    const began = performance.now();
    const append: Append = { code, row: row(last, 1, [`2/0f8fad5b-d9cb-469f-a165-${last}`]), snapshot: null };
    await new Promise((resolve, reject) =>
      committer.enqueue({ plan: () => append, committed: resolve, failed: reject }),
    );
    waits.push(performance.now() - began);
    // The next command of a room comes over the network, so never within the same turn.
    await new Promise((resolve) => setImmediate(resolve));
  }
}

function rounded(ms: number): number {
  return Math.round(ms * 100) / 100;
}
