// The statements of the SQLite store: each prepared once, and held for good.
import type { Database, Statement } from 'better-sqlite3';
import type { LogRow, Snapshot } from '../ports.ts';
import { hold } from './held.ts';
import { HOUR_MS } from './schema.ts';

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
  readonly touchedHour: number;
}

/** A log that is to be removed. */
export type Removed = Pick<Head, 'id' | 'lastRow'> & { readonly bytes: number };

/** `before` is the row that this one follows; null for the first one. */
export type ChainedRow = Stored<LogRow> & { readonly id: number; readonly before: number | null };

/** What each is given and, where it reads, the row it answers with. */
export interface Statements {
  readonly log: Statement<[string], Head>;
  readonly newLog: Statement<[string, string, number, number, number, number]>;
  readonly hasRows: Statement<[Id, Id, Id]>;
  readonly moveOn: Statement<[number, number, number, Id, Id]>;
  readonly moveHour: Statement<[number, Id]>;
  readonly newRow: Statement<[Id | null, number, number, number, string, string]>;
  readonly setSnapshot: Statement<[Id, number, string, string]>;
  readonly snapshot: Statement<[Id], Stored<Snapshot>>;
  readonly row: Statement<[Id], ChainedRow>;
  readonly rewriteRow: Statement<[string, Id]>;
  readonly rewriteSnapshot: Statement<[string, string, Id, number]>;
  readonly codes: Statement<[string, number], { code: string }>;
  readonly byCode: Statement<[string], Removed>;
  readonly older: Statement<[number, number, number, number], Removed>;
  readonly oldestFirst: Statement<[], Removed>;
  readonly bytes: Statement<[], { bytes: number }>;
  readonly removeRows: Statement<[Id]>;
  readonly remove: Statement<[Id]>;
  readonly count: Statement<[], { logs: number }>;
  readonly version: Statement<[], { user_version: number }>;
}

/** What is asked once a minute: it reads no log that is not due. An hour is `HOUR_MS`. */
export const SWEEPS = {
  older: `
    SELECT id, last_row AS lastRow, bytes FROM log
      WHERE kind IN ('class', 'class-table', 'published', 'club') AND touched_hour <= ? / 3600000 AND touched_at < ?
    UNION ALL
    SELECT id, last_row AS lastRow, bytes FROM log
      WHERE kind IN ('room', 'same-deal') AND touched_hour <= ? / 3600000 AND touched_at < ?`,
  oldestFirst: 'SELECT id, last_row AS lastRow, bytes FROM log ORDER BY touched_hour, touched_at, id',
} as const;

/** The hour in which a log was touched, as the database counts it. */
export function hourOf(at: number): number {
  return Math.trunc(at / HOUR_MS);
}

export function statementsOf(file: Database): Statements {
  return {
    log: prepared(
      file,
      `SELECT id, kind, version, first_row AS firstRow, last_row AS lastRow, touched_hour AS touchedHour
        FROM log WHERE code = ?`,
    ),
    newLog: prepared(
      file,
      `INSERT INTO log (code, kind, version, touched_at, touched_hour, bytes) VALUES (?, ?, ?, ?, ?, ?)
        ON CONFLICT (code) DO NOTHING`,
    ),
    hasRows: prepared(file, 'UPDATE log SET first_row = ?, last_row = ? WHERE id = ?'),
    moveOn: prepared(
      file,
      'UPDATE log SET version = ?, touched_at = ?, bytes = bytes + ?, last_row = ? WHERE id = ?',
    ),
    moveHour: prepared(file, 'UPDATE log SET touched_hour = ? WHERE id = ?'),
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
    byCode: prepared(file, 'SELECT id, last_row AS lastRow, bytes FROM log WHERE code = ?'),
    older: prepared(file, SWEEPS.older),
    oldestFirst: prepared(file, SWEEPS.oldestFirst),
    bytes: prepared(file, 'SELECT coalesce(sum(bytes), 0) AS bytes FROM log'),
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
