// The tables of the two databases and how they came about: one step a version, run in order when a store is opened.

interface Migration {
  readonly sqlite: string;
  readonly postgres: string;
}

/** Logs are found by the hour in which they were touched last. */
export const HOUR_MS = 3_600_000;

/** Step n leads from version n to n + 1. A step that has been released is never changed; a new one is added. */
export const MIGRATIONS: readonly Migration[] = [
  {
    // Rows lie in the order they came, for writing is what there is most of: laid out by log, a batch of appends
    // touches a page a log and takes half as long again. A snapshot has a row of its own, or each append would write
    // it again.
    sqlite: `
      CREATE TABLE log (
        id INTEGER PRIMARY KEY,
        code TEXT NOT NULL UNIQUE,
        kind TEXT NOT NULL,
        version INTEGER NOT NULL,
        touched_at INTEGER NOT NULL,
        bytes INTEGER NOT NULL
      ) STRICT;
      CREATE TABLE log_row (
        log INTEGER NOT NULL REFERENCES log (id) ON DELETE CASCADE,
        version INTEGER NOT NULL,
        previous INTEGER NOT NULL,
        at INTEGER NOT NULL,
        commands TEXT NOT NULL,
        events TEXT NOT NULL,
        PRIMARY KEY (log, version)
      ) STRICT;
      CREATE TABLE snapshot (
        log INTEGER PRIMARY KEY REFERENCES log (id) ON DELETE CASCADE,
        version INTEGER NOT NULL,
        commands TEXT NOT NULL,
        state TEXT NOT NULL
      ) STRICT;
    `,
    // One SQLite file has one server, which needs no tickets and nodes in tables.
    postgres: `
      CREATE TABLE quadrille.log (
        id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
        code text COLLATE "C" NOT NULL UNIQUE,
        kind text NOT NULL,
        version integer NOT NULL,
        touched_at bigint NOT NULL,
        bytes bigint NOT NULL
      );
      CREATE TABLE quadrille.log_row (
        log bigint NOT NULL REFERENCES quadrille.log (id) ON DELETE CASCADE,
        version integer NOT NULL,
        previous integer NOT NULL,
        at bigint NOT NULL,
        commands text NOT NULL,
        events text NOT NULL,
        PRIMARY KEY (log, version)
      );
      CREATE TABLE quadrille.snapshot (
        log bigint PRIMARY KEY REFERENCES quadrille.log (id) ON DELETE CASCADE,
        version integer NOT NULL,
        commands text NOT NULL,
        state text NOT NULL
      );
      CREATE TABLE quadrille.ticket (
        secret_hash text PRIMARY KEY,
        code text NOT NULL,
        seat integer,
        since integer,
        shown text,
        until timestamptz NOT NULL
      );
      CREATE TABLE quadrille.node (id text PRIMARY KEY, until timestamptz NOT NULL);
    `,
  },
  {
    // A row knows the one before it and a log its first and last row, so that no index by log and version is written
    // with each append: a commit of many logs touches the pages at the end of the table and few others.
    sqlite: `
      ALTER TABLE log ADD COLUMN first_row INTEGER NOT NULL DEFAULT 0;
      ALTER TABLE log ADD COLUMN last_row INTEGER NOT NULL DEFAULT 0;
      UPDATE log SET
        first_row = (SELECT rowid FROM log_row WHERE log_row.log = log.id ORDER BY version LIMIT 1),
        last_row = (SELECT rowid FROM log_row WHERE log_row.log = log.id ORDER BY version DESC LIMIT 1);
      CREATE TABLE chained_row (
        id INTEGER PRIMARY KEY,
        before INTEGER,
        previous INTEGER NOT NULL,
        version INTEGER NOT NULL,
        at INTEGER NOT NULL,
        commands TEXT NOT NULL,
        events TEXT NOT NULL
      ) STRICT;
      INSERT INTO chained_row (id, before, previous, version, at, commands, events)
        SELECT rowid, lag(rowid) OVER (PARTITION BY log ORDER BY version), previous, version, at, commands, events
        FROM log_row;
      DROP TABLE log_row;
      ALTER TABLE chained_row RENAME TO log_row;
    `,
    // There the database orders its writes by itself, and following a chain would cost it a look-up a row.
    postgres: '',
  },
  {
    // What is too old or too many is found without a look at the rest. By the hour, for an index is written only when
    // its column changes: with each append it would be one write more.
    sqlite: `
      ALTER TABLE log ADD COLUMN touched_hour INTEGER NOT NULL DEFAULT 0;
      UPDATE log SET touched_hour = touched_at / 3600000;
      CREATE INDEX log_kind_hour ON log (kind, touched_hour);
      CREATE INDEX log_hour ON log (touched_hour);
    `,
    // The bytes of all logs are the sum of a table whose rows no two connections write at once, but for chance.
    postgres: `
      ALTER TABLE quadrille.log
        ADD COLUMN touched_hour bigint GENERATED ALWAYS AS (touched_at / 3600000) STORED;
      CREATE INDEX log_kind_hour ON quadrille.log (kind, touched_hour);
      CREATE INDEX log_hour ON quadrille.log (touched_hour);
      CREATE TABLE quadrille.stored_bytes (part integer PRIMARY KEY, bytes bigint NOT NULL);
      INSERT INTO quadrille.stored_bytes SELECT 0, coalesce(sum(bytes), 0) FROM quadrille.log;
    `,
  },
];

/** A table that earlier versions had, which were never released, and this one has not. */
export const UNRELEASED_TABLE = 'room';

export function tooOld(where: string, remedy: string): string {
  return `${where} was made by an earlier, unreleased version of Quadrille, which this one cannot read; ${remedy}.`;
}

/** Why a store with this version is left alone, or null when it can be brought up to date. */
export function tooNew(version: number, where: string): string | null {
  if (version <= MIGRATIONS.length) return null;
  return (
    `${where} was written by a newer version of Quadrille (schema ${version}; this one knows ` +
    `${MIGRATIONS.length}). Start that version, or choose another place for the data.`
  );
}
