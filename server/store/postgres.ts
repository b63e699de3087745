// The store in PostgreSQL: several servers on one set of logs, each append checked against the version of its log.
import pg from 'pg';
import type { Append, AppendOutcome, LogRow, Snapshot, Store, StoredLog } from '../ports.ts';
import { type LoadedLog, type LoadedRow, REMOVED_AT_ONCE, SQL } from './postgres-statements.ts';
import { checkLog, commandsFrom, isRow, kindFrom, plainText, storedText } from './stored-text.ts';

type Ask = <Row extends pg.QueryResultRow>(
  name: keyof typeof SQL,
  values: readonly unknown[],
) => Promise<pg.QueryResult<Row>>;
type Reads = Pick<Store, 'load' | 'loadAfter' | 'history' | 'versions' | 'codes' | 'count'>;

export function postgresStore(pool: pg.Pool): Store {
  const ask: Ask = (name, values) =>
    pool.query({ name: `quadrille ${name}`, text: SQL[name], values: [...values] });
  return {
    ...readsOf(ask),
    ...writesTo(ask),
    commit: (batch) => commit(ask, batch),
    close: () => pool.end(),
  };
}

function readsOf(ask: Ask): Reads {
  /** In two trips: rows that are appended between them are loaded as well. */
  async function read(code: string, from: 'snapshot' | 'first row'): Promise<StoredLog | null> {
    const [log] = (await ask<LoadedLog>('log', [storedText(code)])).rows;
    if (log === undefined) return null;
    const snapshot = snapshotIn(log);
    const behind = from === 'snapshot' ? (snapshot?.version ?? 0) : 0;
    const { rows } = await ask<LoadedRow>('rows', [log.id, behind]);
    return rows.length === 0 ? null : { kind: kindFrom(log.kind), snapshot, rows: rows.map(rowFrom) };
  }

  return {
    load: (code) => read(code, 'snapshot'),
    async loadAfter(code, version) {
      const { rows } = await ask<LoadedRow | { version: null }>('rowsAfter', [storedText(code), version]);
      if (rows.length === 0) return null;
      return rows.flatMap((row) => (row.version === null ? [] : [rowFrom(row)]));
    },
    history: (code) => read(code, 'first row'),
    async versions(codes) {
      const { rows } = await ask<{ code: string; version: number }>('versions', [codes.map(storedText)]);
      return new Map(rows.map(({ code, version }) => [plainText(code), version]));
    },
    async codes(after, limit) {
      const { rows } = await ask<{ code: string }>('codes', [after === null ? '' : storedText(after), limit]);
      return rows.map(({ code }) => plainText(code));
    },
    count: () => countedBy(ask, 'count', []),
  };
}

function writesTo(ask: Ask): Omit<Store, keyof Reads | 'commit' | 'close'> {
  return {
    async create(code, log) {
      checkLog(log);
      const { kind, rows, snapshot } = log;
      const { version, at } = rows.at(-1)!;
      const head = [storedText(code), kind, version, at];
      const made = await ask('create', [...head, ...rowColumns(rows), ...snapshotValues(snapshot)]);
      return made.rowCount === rows.length ? 'created' : 'code-taken';
    },
    async rewrite(code, rows, snapshot) {
      const versions = rows.map(({ version }) => version);
      const events = rows.map((row) => row.events);
      await ask('rewrite', [storedText(code), versions, events, ...snapshotValues(snapshot)]);
    },
    async remove(code) {
      await ask('remove', [storedText(code)]);
    },
    async checkWritable() {
      await ask('touch', []);
    },
    removeOlder: ({ classes, rooms }) => countedBy(ask, 'removeOlder', [classes, rooms]),
    async removeBeyond(bytes) {
      for (let all = 0; ; ) {
        const removed = await countedBy(ask, 'removeBeyond', [bytes, REMOVED_AT_ONCE]);
        all += removed;
        if (removed < REMOVED_AT_ONCE) return all;
      }
    },
  };
}

/** A 64-bit whole number arrives as text. */
async function countedBy(
  ask: Ask,
  name: 'count' | 'removeOlder' | 'removeBeyond',
  values: readonly unknown[],
): Promise<number> {
  const { rows } = await ask<{ logs: string }>(name, values);
  return Number(rows[0]?.logs);
}

/** One statement for all; where one append fails by itself, its neighbors are tried without it. */
async function commit(ask: Ask, batch: readonly Append[]): Promise<AppendOutcome[]> {
  const valid = batch.filter(({ row }) => isRow(row));
  const committed = new Set<string>();
  try {
    const { rows } = await ask<{ code: string }>('append', columnsOf(valid));
    for (const { code } of rows) committed.add(plainText(code));
  } catch (error) {
    if (!isOfOneRow(error)) throw error;
    if (batch.length === 1) return ['invalid'];
    const outcomes: AppendOutcome[] = [];
    for (const one of batch) outcomes.push(...(await commit(ask, [one])));
    return outcomes;
  }
  return batch.map(({ code, row }) => {
    if (!isRow(row)) return 'invalid';
    return committed.has(code) ? 'committed' : 'conflict';
  });
}

function snapshotValues(snapshot: Snapshot | null): unknown[] {
  return [snapshot?.version, snapshot && JSON.stringify(snapshot.commands), snapshot?.state];
}

function columnsOf(batch: readonly Append[]): unknown[] {
  return [
    batch.map(({ code }) => storedText(code)),
    ...rowColumns(batch.map(({ row }) => row)),
    batch.map(({ snapshot }) => snapshot?.version ?? null),
    batch.map(({ snapshot }) => snapshot && JSON.stringify(snapshot.commands)),
    batch.map(({ snapshot }) => snapshot?.state ?? null),
  ];
}

/** Versions, the versions before them, times, commands and events. */
function rowColumns(rows: readonly LogRow[]): unknown[] {
  return [
    rows.map(({ version }) => version),
    rows.map(({ after }) => after),
    rows.map(({ at }) => at),
    rows.map(({ commands }) => JSON.stringify(commands)),
    rows.map(({ events }) => events),
  ];
}

/** A 64-bit whole number arrives as text. */
function rowFrom({ version, previous, at, commands, events }: LoadedRow): LogRow {
  return { version, after: previous, at: Number(at), commands: commandsFrom(commands), events };
}

function snapshotIn({ version, commands, state }: LoadedLog): Snapshot | null {
  if (version === null || commands === null || state === null) return null;
  return { version, commands: commandsFrom(commands), state };
}

/** Data that the database does not take, as opposed to an error of the connection or the whole database. */
function isOfOneRow(error: unknown): boolean {
  return error instanceof pg.DatabaseError && /^2[23]/.test(error.code ?? '');
}
