// The store in PostgreSQL: several servers on one set of rooms, each write checked against the room's version.
import pg from 'pg';
import type { Store } from '../ports.ts';
import type { Logged } from '../room/event.ts';
import { checkNumbers, keptText, loggedFrom, plainText, rowOf } from './row.ts';

/** Every statement is one trip and one transaction; named ones are planned once a connection. */
const SQL = {
  create: `
    WITH made AS (
      INSERT INTO quadrille.room (code, version, touched_at) VALUES ($1, $2, $3)
      ON CONFLICT (code) DO NOTHING RETURNING id
    )
    INSERT INTO quadrille.event (room, seq, at, cmd_id, kind, body)
    SELECT made.id, row.* FROM made,
      unnest($4::integer[], $5::bigint[], $6::text[], $7::text[], $8::text[]) AS row`,
  append: `
    WITH moved AS (
      UPDATE quadrille.room SET version = $2, touched_at = $3 WHERE code = $1 AND version = $9 RETURNING id
    )
    INSERT INTO quadrille.event (room, seq, at, cmd_id, kind, body)
    SELECT moved.id, row.* FROM moved,
      unnest($4::integer[], $5::bigint[], $6::text[], $7::text[], $8::text[]) AS row`,
  load: `
    SELECT event.seq, event.at, event.cmd_id, event.body
    FROM quadrille.room LEFT JOIN quadrille.event ON event.room = room.id AND event.seq > $2
    WHERE room.code = $1 ORDER BY event.seq`,
  versions: 'SELECT code, version FROM quadrille.room WHERE code = ANY ($1::text[])',
  codes: 'SELECT code FROM quadrille.room WHERE code > $1 ORDER BY code LIMIT $2',
  amend: `
    UPDATE quadrille.event SET kind = row.kind, body = row.body
    FROM quadrille.room, unnest($2::integer[], $3::text[], $4::text[]) AS row (seq, kind, body)
    WHERE room.code = $1 AND event.room = room.id AND event.seq = row.seq`,
  remove: 'DELETE FROM quadrille.room WHERE code = $1',
  removeOlder: 'DELETE FROM quadrille.room WHERE touched_at < $1',
  count: 'SELECT count(*) AS rooms FROM quadrille.room',
} as const;

/** A 64-bit whole number arrives as text. */
interface LoadedRow {
  readonly seq: number | null;
  readonly at: string;
  readonly cmd_id: string | null;
  readonly body: string;
}

export function postgresStore(pool: pg.Pool): Store {
  function ask<Row extends pg.QueryResultRow>(name: keyof typeof SQL, values: readonly unknown[]) {
    return pool.query<Row>({ name: `quadrille ${name}`, text: SQL[name], values: [...values] });
  }

  return {
    async create(code, log) {
      checkNumbers(0, log);
      const made = await ask('create', written(code, log));
      return made.rowCount === log.length ? 'kept' : 'code-taken';
    },
    async append(code, after, log) {
      checkNumbers(after, log);
      try {
        const moved = await ask('append', [...written(code, log), after]);
        return moved.rowCount === log.length ? 'kept' : 'conflict';
      } catch (error) {
        if (isRepeatedCommand(error)) return 'repeated';
        throw error;
      }
    },
    async load(code, after = 0) {
      const { rows } = await ask<LoadedRow>('load', [keptText(code), after]);
      if (rows.length === 0) return null;
      return rows.flatMap(({ seq, at, ...row }) =>
        seq === null ? [] : [loggedFrom({ ...row, seq, at: Number(at) })],
      );
    },
    async versions(codes) {
      const { rows } = await ask<{ code: string; version: number }>('versions', [codes.map(keptText)]);
      return new Map(rows.map(({ code, version }) => [plainText(code), version]));
    },
    async codes(behind, most) {
      const first = behind === null ? '' : keptText(behind);
      const { rows } = await ask<{ code: string }>('codes', [first, most]);
      return rows.map(({ code }) => plainText(code));
    },
    async amend(code, log) {
      const rows = log.map(rowOf);
      const column = (name: 'seq' | 'kind' | 'body') => rows.map((row) => row[name]);
      await ask('amend', [keptText(code), column('seq'), column('kind'), column('body')]);
    },
    async remove(code) {
      await ask('remove', [keptText(code)]);
    },
    async removeOlder(before) {
      return (await ask('removeOlder', [before])).rowCount ?? 0;
    },
    async count() {
      const { rows } = await ask<{ rooms: string }>('count', []);
      return Number(rows[0]?.rooms);
    },
    close: () => pool.end(),
  };
}

/** The parameters of a write: code, last number, last time, then the events column by column. */
function written(code: string, log: readonly Logged[]): unknown[] {
  const rows = log.map(rowOf);
  const { seq, at } = rows.at(-1)!;
  return [
    keptText(code),
    seq,
    at,
    rows.map((row) => row.seq),
    rows.map((row) => row.at),
    rows.map((row) => row.cmd_id),
    rows.map((row) => row.kind),
    rows.map((row) => row.body),
  ];
}

function isRepeatedCommand(error: unknown): boolean {
  return error instanceof pg.DatabaseError && error.code === '23505' && error.constraint === 'event_command';
}
