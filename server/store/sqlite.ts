// The store in one SQLite file: the default, durable without anything to install or to start.
import { type Database, SqliteError } from 'better-sqlite3';
import type { Append, AppendOutcome, LogRow, Snapshot, Store, StoredLog } from '../ports.ts';
import { hold } from './held.ts';
import type { OpenedStore } from './opened.ts';
import { type FileAccess, type OpenedFile, openFile } from './sqlite-file.ts';
import { bytesOf, checkLog, commandsFrom, isRow, kindFrom, plainText, storedText } from './stored-text.ts';

/** `location` is the file's path; its folder is created where there is none. */
export function openSqlite(location: string, access: FileAccess = 'alone'): OpenedStore {
  const opened = openFile(location, access);
  return opened.ok ? { ok: true, store: sqliteStore(opened) } : opened;
}

/** `commands` is JSON text in the table. */
type Stored<Row> = Omit<Row, 'commands'> & { readonly commands: string };
type Id = number | bigint;

/** Each is prepared once. */
function statementsOf(file: Database) {
  const statements = {
    log: file.prepare<[string], { id: number; kind: string; version: number }>(
      'SELECT id, kind, version FROM log WHERE code = ?',
    ),
    newLog: file.prepare<[string, string, number, number, number]>(
      'INSERT INTO log (code, kind, version, touched_at, bytes) VALUES (?, ?, ?, ?, ?) ON CONFLICT (code) DO NOTHING',
    ),
    moveOn: file.prepare<[number, number, number, Id]>(
      'UPDATE log SET version = ?, touched_at = ?, bytes = bytes + ? WHERE id = ?',
    ),
    newRow: file.prepare<[Id, number, number, number, string, string]>(
      'INSERT INTO log_row (log, version, previous, at, commands, events) VALUES (?, ?, ?, ?, ?, ?)',
    ),
    setSnapshot: file.prepare<[Id, number, string, string]>(
      'INSERT OR REPLACE INTO snapshot (log, version, commands, state) VALUES (?, ?, ?, ?)',
    ),
    snapshot: file.prepare<[Id], Stored<Snapshot>>(
      'SELECT version, commands, state FROM snapshot WHERE log = ?',
    ),
    firstRow: file.prepare<[Id], Stored<LogRow>>(
      `SELECT previous AS after, version, at, commands, events FROM log_row WHERE log = ? ORDER BY version LIMIT 1`,
    ),
    rows: file.prepare<[Id, number], Stored<LogRow>>(
      `SELECT previous AS after, version, at, commands, events FROM log_row WHERE log = ? AND version > ? ORDER BY version`,
    ),
    rewriteRow: file.prepare<[string, Id, number]>(
      'UPDATE log_row SET events = ? WHERE log = ? AND version = ?',
    ),
    rewriteSnapshot: file.prepare<[string, string, Id, number]>(
      'UPDATE snapshot SET commands = ?, state = ? WHERE log = ? AND version = ?',
    ),
    codes: file.prepare<[string, number], { code: string }>(
      'SELECT code FROM log WHERE code > ? ORDER BY code LIMIT ?',
    ),
    remove: file.prepare<[string]>('DELETE FROM log WHERE code = ?'),
    removeOlder: file.prepare<[number, number]>(
      `DELETE FROM log WHERE touched_at < CASE WHEN kind IN ('class', 'class-table') THEN ? ELSE ? END`,
    ),
    removeBeyond: file.prepare<[number]>(`
      DELETE FROM log WHERE id IN (
        SELECT id FROM (SELECT id, sum(bytes) OVER (ORDER BY touched_at DESC, id DESC) AS held FROM log) WHERE held > ?
      )`),
    count: file.prepare<[], { logs: number }>('SELECT count(*) AS logs FROM log'),
    version: file.prepare<[], { user_version: number }>('PRAGMA user_version'),
  };
  for (const statement of Object.values(statements)) hold(statement);
  return statements;
}

type Statements = ReturnType<typeof statementsOf>;
type Reads = Pick<Store, 'load' | 'loadAfter' | 'history' | 'versions' | 'codes' | 'count'>;

function sqliteStore({ file, close }: OpenedFile & { ok: true }): Store {
  const sql = statementsOf(file);
  const appendAll = appendsTo(file, sql);
  return {
    ...readsOf(file, sql),
    ...writesTo(file, sql),
    commit: async (batch) => commit(file, appendAll, batch),
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
    const first = sql.firstRow.all(log.id);
    const behind = Math.max(first[0]?.version ?? 0, from === 'snapshot' ? (snapshot?.version ?? 0) : 0);
    return {
      kind: kindFrom(log.kind),
      snapshot: snapshot && { ...snapshot, commands: commandsFrom(snapshot.commands) },
      rows: [...first, ...sql.rows.all(log.id, behind)].map(withCommands),
    };
  });

  const readAfter = file.transaction((code: string, version: number): LogRow[] | null => {
    const log = sql.log.get(storedText(code));
    return log ? sql.rows.all(log.id, version).map(withCommands) : null;
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

function writesTo(file: Database, sql: Statements): Omit<Store, keyof Reads | 'commit' | 'close'> {
  const create = file.transaction((code: string, { kind, rows, snapshot }: StoredLog) => {
    const { version, at } = rows.at(-1)!;
    const bytes = rows.reduce((sum, row) => sum + bytesOf(row), 0);
    const made = sql.newLog.run(storedText(code), kind, version, at, bytes);
    if (made.changes === 0) return 'code-taken';
    for (const row of rows) writeRow(sql, made.lastInsertRowid, row);
    if (snapshot) writeSnapshot(sql, made.lastInsertRowid, snapshot);
    return 'created';
  });

  const rewrite = file.transaction((code: string, rows: readonly LogRow[], snapshot: Snapshot | null) => {
    const log = sql.log.get(storedText(code));
    if (log === undefined) return;
    for (const { version, events } of rows) sql.rewriteRow.run(events, log.id, version);
    if (snapshot) {
      const { version, commands, state } = snapshot;
      sql.rewriteSnapshot.run(JSON.stringify(commands), state, log.id, version);
    }
  });

  /** Writes the same number over itself: a page of the file, and with it the disk, have to take it. */
  const touch = file.transaction(() => {
    file.exec(`PRAGMA user_version = ${sql.version.get()!.user_version}`);
  });

  return {
    async create(code, log) {
      checkLog(log);
      return create.immediate(code, log);
    },
    checkWritable: async () => touch.immediate(),
    rewrite: async (code, rows, snapshot) => rewrite.immediate(code, rows, snapshot),
    async remove(code) {
      sql.remove.run(storedText(code));
    },
    removeOlder: async ({ classes, rooms }) => sql.removeOlder.run(classes, rooms).changes,
    removeBeyond: async (bytes) => sql.removeBeyond.run(bytes).changes,
  };
}

type AppendAll = ReturnType<typeof appendsTo>;

function appendsTo(file: Database, sql: Statements) {
  return file.transaction((batch: readonly Append[]) =>
    batch.map(({ code, row, snapshot }): AppendOutcome => {
      if (!isRow(row)) return 'invalid';
      const log = sql.log.get(storedText(code));
      if (log?.version !== row.after) return 'conflict';
      sql.moveOn.run(row.version, row.at, bytesOf(row), log.id);
      writeRow(sql, log.id, row);
      if (snapshot) writeSnapshot(sql, log.id, snapshot);
      return 'committed';
    }),
  );
}

/** Where one append fails by itself, its neighbors are tried without it. */
function commit(file: Database, appendAll: AppendAll, batch: readonly Append[]): AppendOutcome[] {
  try {
    return appendAll.immediate(batch);
  } catch (error) {
    if (!file.open || !isOfOneRow(error)) throw error;
    return batch.length === 1 ? ['invalid'] : batch.flatMap((one) => commit(file, appendAll, [one]));
  }
}

function writeRow(sql: Statements, log: Id, { version, after, at, commands, events }: LogRow): void {
  sql.newRow.run(log, version, after, at, JSON.stringify(commands), events);
}

function writeSnapshot(sql: Statements, log: Id, { version, commands, state }: Snapshot): void {
  sql.setSnapshot.run(log, version, JSON.stringify(commands), state);
}

/** As opposed to an error of the whole file: a full disk, a file that another process holds. */
function isOfOneRow(error: unknown): boolean {
  return !(error instanceof SqliteError) || error.code.startsWith('SQLITE_CONSTRAINT');
}

function withCommands({ commands, ...row }: Stored<LogRow>): LogRow {
  return { ...row, commands: commandsFrom(commands) };
}
