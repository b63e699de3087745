// The statements of the SQLite store: each prepared once, and held for good.
import type { Database, Statement } from 'better-sqlite3';
import type { LogRow, Snapshot } from '../ports.ts';
import { hold } from './held.ts';

/** `commands` is JSON text in the table. */
export type Stored<Row> = Omit<Row, 'commands'> & { readonly commands: string };
export type Id = number | bigint;

/** A log as its table has it: where its chain of rows begins and ends. */
export interface Head {
  readonly id: number;
  readonly kind: string;
  readonly version: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** A log that is to be removed. */
export type Removed = Pick<Head, 'id' | 'lastRow'>;

/** `before` is the row that this one follows; null for the first one. */
export type ChainedRow = Stored<LogRow> & { readonly id: number; readonly before: number | null };

/** What each is given and, where it reads, the row it answers with. */
export interface Statements {
  readonly log: Statement<[string], Head>;
  readonly newLog: Statement<[string, string, number, number, number]>;
  readonly hasRows: Statement<[Id, Id, Id]>;
  readonly moveOn: Statement<[number, number, number, Id, Id]>;
  readonly newRow: Statement<[Id | null, number, number, number, string, string]>;
  readonly setSnapshot: Statement<[Id, number, string, string]>;
  readonly snapshot: Statement<[Id], Stored<Snapshot>>;
  readonly row: Statement<[Id], ChainedRow>;
  readonly rewriteRow: Statement<[string, Id]>;
  readonly rewriteSnapshot: Statement<[string, string, Id, number]>;
  readonly codes: Statement<[string, number], { code: string }>;
  readonly byCode: Statement<[string], Removed>;
  readonly older: Statement<[number, number], Removed>;
  readonly beyond: Statement<[number], Removed>;
  readonly removeRows: Statement<[Id]>;
  readonly remove: Statement<[Id]>;
  readonly count: Statement<[], { logs: number }>;
  readonly version: Statement<[], { user_version: number }>;
}

export function statementsOf(file: Database): Statements {
  return {
    log: prepared(
      file,
      'SELECT id, kind, version, first_row AS firstRow, last_row AS lastRow FROM log WHERE code = ?',
    ),
    newLog: prepared(
      file,
      'INSERT INTO log (code, kind, version, touched_at, bytes) VALUES (?, ?, ?, ?, ?) ON CONFLICT (code) DO NOTHING',
    ),
    hasRows: prepared(file, 'UPDATE log SET first_row = ?, last_row = ? WHERE id = ?'),
    moveOn: prepared(
      file,
      'UPDATE log SET version = ?, touched_at = ?, bytes = bytes + ?, last_row = ? WHERE id = ?',
    ),
    newRow: prepared(
      file,
      'INSERT INTO log_row (before, previous, version, at, commands, events) VALUES (?, ?, ?, ?, ?, ?)',
    ),
    setSnapshot: prepared(
      file,
      'INSERT OR REPLACE INTO snapshot (log, version, commands, state) VALUES (?, ?, ?, ?)',
    ),
    snapshot: prepared(file, 'SELECT version, commands, state FROM snapshot WHERE log = ?'),
    row: prepared(
      file,
      'SELECT id, before, previous AS after, version, at, commands, events FROM log_row WHERE id = ?',
    ),
    rewriteRow: prepared(file, 'UPDATE log_row SET events = ? WHERE id = ?'),
    rewriteSnapshot: prepared(
      file,
      'UPDATE snapshot SET commands = ?, state = ? WHERE log = ? AND version = ?',
    ),
    codes: prepared(file, 'SELECT code FROM log WHERE code > ? ORDER BY code LIMIT ?'),
    byCode: prepared(file, 'SELECT id, last_row AS lastRow FROM log WHERE code = ?'),
    older: prepared(
      file,
      `SELECT id, last_row AS lastRow FROM log
        WHERE touched_at < CASE WHEN kind IN ('class', 'class-table', 'published', 'club') THEN ? ELSE ? END`,
    ),
    beyond: prepared(
      file,
      `SELECT id, last_row AS lastRow FROM (
        SELECT id, last_row, sum(bytes) OVER (ORDER BY touched_at DESC, id DESC) AS held FROM log
      ) WHERE held > ?`,
    ),
    removeRows: prepared(
      file,
      `WITH RECURSIVE chain (id) AS (
        VALUES (?)
        UNION ALL
        SELECT log_row.before FROM chain JOIN log_row USING (id) WHERE log_row.before IS NOT NULL
      )
      DELETE FROM log_row WHERE id IN (SELECT id FROM chain)`,
    ),
    remove: prepared(file, 'DELETE FROM log WHERE id = ?'),
    count: prepared(file, 'SELECT count(*) AS logs FROM log'),
    version: prepared(file, 'PRAGMA user_version'),
  };
}

function prepared<Values extends unknown[], Row = unknown>(
  file: Database,
  text: string,
): Statement<Values, Row> {
  return hold(file.prepare<Values, Row>(text));
}

/** The rows with events behind number `version`, in order: from the last one back. */
export function rowsBehind(sql: Statements, { lastRow }: Head, version: number): ChainedRow[] {
  const rows: ChainedRow[] = [];
  let row = sql.row.get(lastRow);
  while (row && row.version > version) {
    rows.push(row);
    row = row.before === null ? undefined : sql.row.get(row.before);
  }
  return rows.reverse();
}
