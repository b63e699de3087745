// The statements of the PostgreSQL store: each is one trip and one transaction, planned once a connection.

/** A stored log with its snapshot, whose columns are null where there is none. */
export interface LoadedLog {
  readonly id: string;
  readonly kind: string;
  readonly version: number | null;
  readonly commands: string | null;
  readonly state: string | null;
}

export interface LoadedRow {
  readonly version: number;
  readonly previous: number;
  readonly at: string;
  readonly commands: string;
  readonly events: string;
}

/** Logs that `removeBeyond` removes at most; where it has removed so many it is to be asked again. */
export const REMOVED_AT_ONCE = 200;

/**
 * Each is one text with places for parameters. Where the bytes of logs change, the row of `stored_bytes` that the connection
 * adds to is locked last in a statement, so that two that share one never wait for one another. An hour is `HOUR_MS`.
 */
export const SQL = {
  create: `
    WITH made AS (
      INSERT INTO quadrille.log (code, kind, version, touched_at, bytes)
      SELECT $1, $2, $3::integer, $4::bigint, sum(octet_length(commands) + octet_length(events))
      FROM unnest($8::text[], $9::text[]) AS row (commands, events)
      ON CONFLICT (code) DO NOTHING RETURNING id, bytes
    ), counted AS (
      INSERT INTO quadrille.stored_bytes (part, bytes) SELECT pg_backend_pid() % 1024, bytes FROM made
      ON CONFLICT (part) DO UPDATE SET bytes = stored_bytes.bytes + excluded.bytes
    ), snapped AS (
      INSERT INTO quadrille.snapshot (log, version, commands, state)
      SELECT id, $10::integer, $11::text, $12::text FROM made WHERE $10::integer IS NOT NULL
    )
    INSERT INTO quadrille.log_row (log, version, previous, at, commands, events)
    SELECT made.id, row.* FROM made,
      unnest($5::integer[], $6::integer[], $7::bigint[], $8::text[], $9::text[]) AS row`,
  // Rows are locked in the order of their ids, so that the batches of two servers never wait for one another.
  append: `
    WITH given AS (
      SELECT * FROM unnest(
        $1::text[], $2::integer[], $3::integer[], $4::bigint[], $5::text[], $6::text[],
        $7::integer[], $8::text[], $9::text[]
      ) AS given (code, version, previous, at, commands, events, snap_version, snap_commands, snap_state)
    ), locked AS MATERIALIZED (
      SELECT log.id, given.* FROM quadrille.log JOIN given USING (code)
      WHERE log.version = given.previous ORDER BY log.id FOR UPDATE OF log
    ), moved AS (
      UPDATE quadrille.log SET version = locked.version, touched_at = locked.at,
        bytes = log.bytes + octet_length(locked.commands) + octet_length(locked.events)
      FROM locked
      WHERE log.id = locked.id AND log.version = locked.previous RETURNING locked.*
    ), snapped AS (
      INSERT INTO quadrille.snapshot (log, version, commands, state)
      SELECT id, snap_version, snap_commands, snap_state FROM moved WHERE snap_version IS NOT NULL
      ON CONFLICT (log) DO UPDATE
      SET version = excluded.version, commands = excluded.commands, state = excluded.state
    ), appended AS (
      INSERT INTO quadrille.log_row (log, version, previous, at, commands, events)
      SELECT id, version, previous, at, commands, events FROM moved
    ), counted AS (
      INSERT INTO quadrille.stored_bytes (part, bytes)
      SELECT pg_backend_pid() % 1024, sum(octet_length(commands) + octet_length(events)) FROM moved HAVING count(*) > 0
      ON CONFLICT (part) DO UPDATE SET bytes = stored_bytes.bytes + excluded.bytes
    )
    SELECT code FROM moved`,
  log: `
    SELECT log.id, log.kind, snapshot.version, snapshot.commands, snapshot.state
    FROM quadrille.log LEFT JOIN quadrille.snapshot ON snapshot.log = log.id WHERE log.code = $1`,
  rows: `
    (SELECT version, previous, at, commands, events FROM quadrille.log_row
      WHERE log = $1 ORDER BY version LIMIT 1)
    UNION ALL
    (SELECT version, previous, at, commands, events FROM quadrille.log_row
      WHERE log = $1 AND version > $2 AND previous > 0 ORDER BY version)`,
  rowsAfter: `
    SELECT row.version, row.previous, row.at, row.commands, row.events
    FROM quadrille.log LEFT JOIN quadrille.log_row AS row ON row.log = log.id AND row.version > $2
    WHERE log.code = $1 ORDER BY row.version`,
  rewrite: `
    WITH this AS (
      SELECT id FROM quadrille.log WHERE code = $1
    ), snapped AS (
      UPDATE quadrille.snapshot SET commands = $5, state = $6 FROM this
      WHERE snapshot.log = this.id AND snapshot.version = $4::integer
    )
    UPDATE quadrille.log_row SET events = row.events
    FROM this, unnest($2::integer[], $3::text[]) AS row (version, events)
    WHERE log_row.log = this.id AND log_row.version = row.version`,
  versions: 'SELECT code, version FROM quadrille.log WHERE code = ANY ($1::text[])',
  codes: 'SELECT code FROM quadrille.log WHERE code > $1 ORDER BY code LIMIT $2',
  remove: `
    WITH gone AS (
      DELETE FROM quadrille.log WHERE code = $1 RETURNING bytes
    )
    INSERT INTO quadrille.stored_bytes (part, bytes)
    SELECT pg_backend_pid() % 1024, -sum(bytes) FROM gone HAVING count(*) > 0
    ON CONFLICT (part) DO UPDATE SET bytes = stored_bytes.bytes + excluded.bytes`,
  removeOlder: `
    WITH gone AS (
      DELETE FROM quadrille.log
      WHERE kind IN ('class', 'class-table', 'published', 'club')
          AND touched_hour <= $1::bigint / 3600000 AND touched_at < $1::bigint
        OR kind IN ('room', 'same-deal') AND touched_hour <= $2::bigint / 3600000 AND touched_at < $2::bigint
      RETURNING bytes
    ), counted AS (
      INSERT INTO quadrille.stored_bytes (part, bytes)
      SELECT pg_backend_pid() % 1024, -sum(bytes) FROM gone HAVING count(*) > 0
      ON CONFLICT (part) DO UPDATE SET bytes = stored_bytes.bytes + excluded.bytes
    )
    SELECT count(*) AS logs FROM gone`,
  // Another server that removes at the same time finds those gone, and the sum as it then is. By an array they are
  // looked up one by one; a join might read all there are.
  removeBeyond: `
    WITH excess AS MATERIALIZED (
      SELECT coalesce(sum(bytes), 0) - $1::bigint AS bytes FROM quadrille.stored_bytes
    ), oldest AS MATERIALIZED (
      SELECT id, touched_at, bytes FROM quadrille.log WHERE (SELECT bytes FROM excess) > 0
      ORDER BY touched_hour, touched_at, id LIMIT $2::integer
    ), gone AS (
      DELETE FROM quadrille.log WHERE id = ANY (ARRAY(
        SELECT id FROM (
          SELECT id, sum(bytes) OVER (ORDER BY touched_at, id) - bytes AS older FROM oldest
        ) AS sizes WHERE older < (SELECT bytes FROM excess)
      ))
      RETURNING bytes
    ), counted AS (
      INSERT INTO quadrille.stored_bytes (part, bytes)
      SELECT pg_backend_pid() % 1024, -sum(bytes) FROM gone HAVING count(*) > 0
      ON CONFLICT (part) DO UPDATE SET bytes = stored_bytes.bytes + excluded.bytes
    )
    SELECT count(*) AS logs FROM gone`,
  count: 'SELECT count(*) AS logs FROM quadrille.log',
  touch: 'UPDATE quadrille.schema_version SET version = version',
} as const;
