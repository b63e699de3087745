// The store in one SQLite file: the default, durable without anything to install or to start.
import { type Database, SqliteError } from 'better-sqlite3';
import type { Store } from '../ports.ts';
import { GroupCommit } from './group-commit.ts';
import type { OpenedStore } from './opened.ts';
import { checkNumbers, commandsOf, type EventRow, keptText, loggedFrom, plainText, rowOf } from './row.ts';
import { openFile } from './sqlite-file.ts';

/** `location` is the file's path; its folder is created where there is none. */
export function openSqlite(location: string): OpenedStore {
  const opened = openFile(location);
  return opened.ok ? { ok: true, store: sqliteStore(opened.file) } : opened;
}

function statementsOf(file: Database) {
  return {
    room: file.prepare<[string], { id: number; version: number }>(
      'SELECT id, version FROM room WHERE code = ?',
    ),
    newRoom: file.prepare<[string, number, number]>(
      'INSERT INTO room (code, version, touched_at) VALUES (?, ?, ?) ON CONFLICT (code) DO NOTHING',
    ),
    moveOn: file.prepare<[number, number, number, number]>(
      'UPDATE room SET version = ?, touched_at = ? WHERE id = ? AND version = ?',
    ),
    newEvent: file.prepare<[number | bigint, number, string | null, string, string, number]>(
      'INSERT INTO event (room, seq, cmd_id, kind, body, at) VALUES (?, ?, ?, ?, ?, ?)',
    ),
    known: file.prepare<[number, string], { seq: number }>(
      'SELECT seq FROM event WHERE room = ? AND cmd_id = ?',
    ),
    events: file.prepare<[number, number], Omit<EventRow, 'kind'>>(
      'SELECT seq, at, cmd_id, body FROM event WHERE room = ? AND seq > ? ORDER BY seq',
    ),
    codes: file.prepare<[string, number], { code: string }>(
      'SELECT code FROM room WHERE code > ? ORDER BY code LIMIT ?',
    ),
    amend: file.prepare<[string, string, string, number]>(
      'UPDATE event SET kind = ?, body = ? WHERE room = (SELECT id FROM room WHERE code = ?) AND seq = ?',
    ),
    remove: file.prepare<[string]>('DELETE FROM room WHERE code = ?'),
    removeOlder: file.prepare<[number]>('DELETE FROM room WHERE touched_at < ?'),
    count: file.prepare<[], { rooms: number }>('SELECT count(*) AS rooms FROM room'),
  };
}

function sqliteStore(file: Database): Store {
  const sql = statementsOf(file);
  const transaction = file.transaction((work: () => void) => work());
  const writes = new GroupCommit(
    (work) => transaction.immediate(work),
    (error) => error instanceof SqliteError && !error.code.startsWith('SQLITE_CONSTRAINT'),
  );

  /** One transaction, or another process might remove the room between the two questions. */
  const read = file.transaction((code: string, after: number) => {
    const room = sql.room.get(keptText(code));
    return room ? sql.events.all(room.id, after) : null;
  });

  function keep(room: number | bigint, rows: readonly EventRow[]): void {
    for (const { seq, cmd_id, kind, body, at } of rows) sql.newEvent.run(room, seq, cmd_id, kind, body, at);
  }

  return {
    async create(code, log) {
      checkNumbers(0, log);
      const rows = log.map(rowOf);
      const { seq, at } = rows.at(-1)!;
      return writes.run(() => {
        const made = sql.newRoom.run(keptText(code), seq, at);
        if (made.changes === 0) return 'code-taken';
        keep(made.lastInsertRowid, rows);
        return 'kept';
      });
    },
    async append(code, after, log) {
      checkNumbers(after, log);
      const rows = log.map(rowOf);
      const commands = commandsOf(log).map(keptText);
      const { seq, at } = rows.at(-1)!;
      return writes.run(() => {
        const room = sql.room.get(keptText(code));
        if (room?.version !== after) return 'conflict';
        if (commands.some((command) => sql.known.get(room.id, command))) return 'repeated';
        sql.moveOn.run(seq, at, room.id, after);
        keep(room.id, rows);
        return 'kept';
      });
    },
    async load(code, after = 0) {
      return read(code, after)?.map(loggedFrom) ?? null;
    },
    async versions(codes) {
      return new Map(
        codes.flatMap((code): [string, number][] => {
          const room = sql.room.get(keptText(code));
          return room ? [[code, room.version]] : [];
        }),
      );
    },
    async codes(behind, most) {
      return sql.codes.all(behind === null ? '' : keptText(behind), most).map(({ code }) => plainText(code));
    },
    async amend(code, log) {
      const rows = log.map(rowOf);
      await writes.run(() => {
        for (const { seq, kind, body } of rows) sql.amend.run(kind, body, keptText(code), seq);
      });
    },
    async remove(code) {
      await writes.run(() => sql.remove.run(keptText(code)));
    },
    async removeOlder(before) {
      return writes.run(() => sql.removeOlder.run(before).changes);
    },
    async count() {
      return sql.count.get()!.rooms;
    },
    async close() {
      writes.flush();
      file.close();
    },
  };
}
