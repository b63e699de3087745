// The store in one SQLite file: the default, durable without anything to install or to start.
import { type Database, SqliteError } from 'better-sqlite3';
import type { Append, AppendOutcome, LogRow, Snapshot, Store, StoredLog } from '../ports.ts';
import type { OpenedStore } from './opened.ts';
import { type FileAccess, type OpenedFile, openFile } from './sqlite-file.ts';
import {
  type ChainedRow,
  hourOf,
  type Id,
  type Removed,
  rowsBehind,
  type Statements,
  statementsOf,
} from './sqlite-statements.ts';
import { bytesOf, checkLog, commandsFrom, isRow, kindFrom, plainText, storedText } from './stored-text.ts';

/** `location` is the file's path; its folder is created where there is none. */
export function openSqlite(location: string, access: FileAccess = 'alone'): OpenedStore {
  const opened = openFile(location, access);
  return opened.ok ? { ok: true, store: sqliteStore(opened) } : opened;
}

type Reads = Pick<Store, 'load' | 'loadAfter' | 'history' | 'versions' | 'codes' | 'count'>;

/** The bytes of all logs: counted when they are first asked for, and kept up with from then on; nobody else writes here. */
class StoredBytes {
  readonly #count: () => number;
  #bytes: number | null = null;

  constructor(count: () => number) {
    this.#count = count;
  }

  get all(): number {
    this.#bytes ??= this.#count();
    return this.#bytes;
  }

  /** To be called when the change is stored. */
  add(bytes: number): void {
    if (this.#bytes !== null) this.#bytes += bytes;
  }
}

function sqliteStore({ file, close }: OpenedFile & { ok: true }): Store {
  const sql = statementsOf(file);
  const stored = new StoredBytes(() => sql.bytes.get()!.bytes);
  const appendAll = appendsTo(file, sql);
  return {
    ...readsOf(file, sql),
    ...writesTo(file, sql, stored),
    async commit(batch) {
      const { outcomes, bytes } = commit(file, appendAll, batch);
      stored.add(bytes);
      return outcomes;
    },
    async close() {
      close();
    },
  };
}

/** One transaction for each, or another process might remove the log between two questions. */
function readsOf(file: Database, sql: Statements): Reads {
  const read = file.transaction((code: string, from: 'snapshot' | 'first row'): StoredLog | null => {
    const log = sql.log.get(storedText(code));
    if (log === undefined) return null;
    const snapshot = sql.snapshot.get(log.id) ?? null;
    const first = sql.row.get(log.firstRow);
    const behind = Math.max(first?.version ?? 0, from === 'snapshot' ? (snapshot?.version ?? 0) : 0);
    return {
      kind: kindFrom(log.kind),
      snapshot: snapshot && { ...snapshot, commands: commandsFrom(snapshot.commands) },
      rows: [...(first ? [first] : []), ...rowsBehind(sql, log, behind)].map(plainRow),
    };
  });

  const readAfter = file.transaction((code: string, version: number): LogRow[] | null => {
    const log = sql.log.get(storedText(code));
    return log ? rowsBehind(sql, log, version).map(plainRow) : null;
  });

  return {
    load: async (code) => read(code, 'snapshot'),
    loadAfter: async (code, version) => readAfter(code, version),
    history: async (code) => read(code, 'first row'),
    async versions(codes) {
      return new Map(
        codes.flatMap((code): [string, number][] => {
          const log = sql.log.get(storedText(code));
          return log ? [[code, log.version]] : [];
        }),
      );
    },
    async codes(after, limit) {
      return sql.codes.all(after === null ? '' : storedText(after), limit).map(({ code }) => plainText(code));
    },
    count: async () => sql.count.get()!.logs,
  };
}

function writesTo(
  file: Database,
  sql: Statements,
  stored: StoredBytes,
): Omit<Store, keyof Reads | 'commit' | 'close'> {
  const create = file.transaction((code: string, { kind, rows, snapshot }: StoredLog) => {
    const { version, at } = rows.at(-1)!;
    const bytes = rows.reduce((sum, row) => sum + bytesOf(row), 0);
    const made = sql.newLog.run(storedText(code), kind, version, at, hourOf(at), bytes);
    if (made.changes === 0) return null;
    const ids: Id[] = [];
    for (const row of rows) ids.push(writeRow(sql, row, ids.at(-1) ?? null));
    sql.hasRows.run(ids[0]!, ids.at(-1)!, made.lastInsertRowid);
    if (snapshot) writeSnapshot(sql, made.lastInsertRowid, snapshot);
    return bytes;
  });

  const rewrite = file.transaction((code: string, rows: readonly LogRow[], snapshot: Snapshot | null) => {
    const log = sql.log.get(storedText(code));
    if (log === undefined) return;
    const fresh = new Map(rows.map(({ version, events }) => [version, events]));
    for (const { id, version } of rowsBehind(sql, log, 0)) {
      const events = fresh.get(version);
      if (events !== undefined) sql.rewriteRow.run(events, id);
    }
    if (snapshot) {
      const { version, commands, state } = snapshot;
      sql.rewriteSnapshot.run(JSON.stringify(commands), state, log.id, version);
    }
  });

  /** Each with its rows, which the log alone finds. */
  const removeAll = file.transaction((which: () => readonly Removed[]): readonly Removed[] => {
    const removed = which();
    for (const { id, lastRow } of removed) {
      sql.removeRows.run(lastRow);
      sql.remove.run(id);
    }
    return removed;
  });

  /** Answers how many. */
  function remove(which: () => readonly Removed[]): number {
    const removed = removeAll.immediate(which);
    for (const { bytes } of removed) stored.add(-bytes);
    return removed.length;
  }

  function oldestBeyond(bytes: number): Removed[] {
    let excess = stored.all - bytes;
    const beyond: Removed[] = [];
    if (excess <= 0) return beyond;
    for (const log of sql.oldestFirst.iterate()) {
      beyond.push(log);
      excess -= log.bytes;
      if (excess <= 0) break;
    }
    return beyond;
  }

  /** Writes the same number over itself: a page of the file, and with it the disk, have to take it. */
  const touch = file.transaction(() => {
    file.exec(`PRAGMA user_version = ${sql.version.get()!.user_version}`);
  });

  return {
    async create(code, log) {
      checkLog(log);
      const bytes = create.immediate(code, log);
      stored.add(bytes ?? 0);
      return bytes === null ? 'code-taken' : 'created';
    },
    checkWritable: async () => touch.immediate(),
    rewrite: async (code, rows, snapshot) => rewrite.immediate(code, rows, snapshot),
    async remove(code) {
      remove(() => sql.byCode.all(storedText(code)));
    },
    removeOlder: async ({ classes, rooms }) => remove(() => sql.older.all(classes, classes, rooms, rooms)),
    removeBeyond: async (bytes) => remove(() => oldestBeyond(bytes)),
  };
}

type AppendAll = ReturnType<typeof appendsTo>;

/** What became of a batch, and by how many bytes the logs have grown. */
interface Committed {
  readonly outcomes: readonly AppendOutcome[];
  readonly bytes: number;
}

function appendsTo(file: Database, sql: Statements) {
  return file.transaction((batch: readonly Append[]): Committed => {
    let bytes = 0;
    const outcomes = batch.map(({ code, row, snapshot }): AppendOutcome => {
      if (!isRow(row)) return 'invalid';
      const log = sql.log.get(storedText(code));
      if (log?.version !== row.after) return 'conflict';
      const last = writeRow(sql, row, log.lastRow);
      const grown = bytesOf(row);
      sql.moveOn.run(row.version, row.at, grown, last, log.id);
      const hour = hourOf(row.at);
      if (hour !== log.touchedHour) sql.moveHour.run(hour, log.id);
      if (snapshot) writeSnapshot(sql, log.id, snapshot);
      bytes += grown;
      return 'committed';
    });
    return { outcomes, bytes };
  });
}

/** Where one append fails by itself, its neighbors are tried without it. */
function commit(file: Database, appendAll: AppendAll, batch: readonly Append[]): Committed {
  try {
    return appendAll.immediate(batch);
  } catch (error) {
    if (!file.open || !isOfOneRow(error)) throw error;
    if (batch.length === 1) return { outcomes: ['invalid'], bytes: 0 };
    const one = batch.map((append) => commit(file, appendAll, [append]));
    return {
      outcomes: one.flatMap(({ outcomes }) => outcomes),
      bytes: one.reduce((sum, { bytes }) => sum + bytes, 0),
    };
  }
}

/** Answers where it lies, for the row that follows it. */
function writeRow(sql: Statements, { after, version, at, commands, events }: LogRow, before: Id | null): Id {
  return sql.newRow.run(before, after, version, at, JSON.stringify(commands), events).lastInsertRowid;
}

function writeSnapshot(sql: Statements, log: Id, { version, commands, state }: Snapshot): void {
  sql.setSnapshot.run(log, version, JSON.stringify(commands), state);
}

/** As opposed to an error of the whole file: a full disk, a file that another process holds. */
function isOfOneRow(error: unknown): boolean {
  return !(error instanceof SqliteError) || error.code.startsWith('SQLITE_CONSTRAINT');
}

function plainRow({ after, version, at, commands, events }: ChainedRow): LogRow {
  return { after, version, at, commands: commandsFrom(commands), events };
}
