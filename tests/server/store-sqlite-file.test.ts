// The SQLite file itself: what a power cut, another program, a newer version or a lock may do to it.
import { copyFile, mkdir, readFile, stat, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { setImmediate } from 'node:timers/promises';
import v8 from 'node:v8';
import vm from 'node:vm';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { hold } from '../../server/store/held.ts';
import { MIGRATIONS } from '../../server/store/schema.ts';
import { openSqlite } from '../../server/store/sqlite.ts';
import { backupFile } from '../../server/store/sqlite-backup.ts';
import { pragma } from '../../server/store/sqlite-file.ts';
import { appendTo, newLog, row, storeOf } from '../kit/logs.ts';
import { temporaryFolder } from '../kit/temporary.ts';

const CODE = 'ABCDEFGH';
let place: Awaited<ReturnType<typeof temporaryFolder>>;
let location: string;
beforeEach(async () => {
  place = await temporaryFolder();
  location = path.join(place.folder, 'quadrille.db');
});
afterEach(() => place.discard());

function open(where = location): Store {
  return storeOf(openSqlite(where));
}

function messageOf(where = location): string {
  const opened = openSqlite(where);
  return opened.ok ? 'opened' : opened.message;
}

function withFile(work: (file: Database.Database) => void): void {
  const file = hold(new Database(location));
  work(file);
  file.close();
}

describe('a power cut', () => {
  let copies = 0;

  /** The files as a process that is killed now leaves them, the log of writes cut or spoilt as told. */
  async function afterPowerCut(spoil: (wal: string) => Promise<void>): Promise<Store> {
    const folder = path.join(place.folder, `cut-${copies++}`);
    await mkdir(folder);
    const copy = path.join(folder, 'quadrille.db');
    await copyFile(location, copy);
    await copyFile(`${location}-wal`, `${copy}-wal`);
    await spoil(`${copy}-wal`);
    return open(copy);
  }

  async function logAfter(spoil: (wal: string) => Promise<void>) {
    const store = await afterPowerCut(spoil);
    const log = await store.load(CODE);
    await store.close();
    return log?.rows;
  }

  const walSize = async () => (await stat(`${location}-wal`)).size;

  test('after a power cut everything acknowledged is in the file, though nobody closed it', async () => {
    const store = open();
    await store.create(CODE, newLog());
    for (let last = 1; last < 40; last++) {
      await appendTo(store, CODE, row(last, 1, [`1/${last}`]));
      if (last % 8 === 0) expect(await logAfter(async () => {})).toHaveLength(last + 1);
    }
    await store.close();
  });

  test('a write that a power cut tears anywhere in its pages is gone whole, and all before it is there', async () => {
    const store = open();
    await store.create(CODE, newLog());
    await appendTo(store, CODE, row(1, 3, ['1/a']));
    const before = await walSize();
    await appendTo(store, CODE, row(4, 400, ['1/b']));
    const after = await walSize();
    const stored = [row(0), row(1, 3, ['1/a'])];
    expect(after - before).toBeGreaterThan(4 * 4096);
    for (let cut = before; cut < after; cut += 1021) {
      expect(await logAfter((wal) => truncate(wal, cut))).toEqual(stored);
    }
    expect(await logAfter((wal) => truncate(wal, after - 1))).toEqual(stored);
    expect(await logAfter(async () => {})).toEqual([...stored, row(4, 400, ['1/b'])]);
    await store.close();
  });

  test('pages that a power cut leaves as rubbish are not taken for a write', async () => {
    const store = open();
    await store.create(CODE, newLog(2));
    const before = await walSize();
    await appendTo(store, CODE, row(3, 200));
    const after = await walSize();
    for (const at of [before + 30, before + 2000, after - 10]) {
      const log = await logAfter(async (wal) => {
        const bytes = await readFile(wal);
        bytes[at]! ^= 0xff;
        await writeFile(wal, bytes);
      });
      expect(log).toEqual(newLog(2).rows);
    }
    await store.close();
  });

  test('after a power cut the store goes on behind the last whole write', async () => {
    const store = open();
    await store.create(CODE, newLog(1));
    const before = await walSize();
    await appendTo(store, CODE, row(2, 5));
    const restarted = await afterPowerCut((wal) => truncate(wal, before + 5000));
    expect(await appendTo(restarted, CODE, row(7))).toBe('conflict');
    expect(await appendTo(restarted, CODE, row(2, 1, ['1/i']))).toBe('committed');
    expect((await restarted.load(CODE))?.rows).toEqual([row(0), row(1), row(2, 1, ['1/i'])]);
    await Promise.all([store.close(), restarted.close()]);
  });
});

describe('opening', () => {
  test('opening a file creates the folders on the way and makes every commit durable', async () => {
    const deep = path.join(place.folder, 'a', 'b', 'quadrille.db');
    await open(deep).close();
    const file = hold(new Database(deep));
    expect(hold(file.prepare('PRAGMA journal_mode')).pluck().get()).toBe('wal');
    file.close();
  });

  test('a file of a newer version is left alone, and the message says what to do', async () => {
    await open().close();
    withFile((file) => file.exec('PRAGMA user_version = 99'));
    expect(messageOf()).toMatch(/written by a newer version.*schema 99.*Start that version/);
    withFile((file) => expect(pragma(file, 'user_version')).toBe(99));
  });

  test('a file of schema 1 is brought up to date with every row, and goes on and is removed like a new one', async () => {
    withFile((file) => {
      file.exec(MIGRATIONS[0]!.sqlite);
      file.exec(`PRAGMA application_id = ${0x51756164}; PRAGMA user_version = 1`);
      // The rows of two logs lie between one another.
      file.exec(`INSERT INTO log VALUES (1, 'ABCDEFGH', 'room', 4, 9, 0), (2, 'OTHERONE', 'room', 2, 9, 0);
        INSERT INTO log_row VALUES (1, 1, 0, 7, '[]', '["a"]'), (2, 1, 0, 7, '[]', '["b"]'),
          (1, 3, 1, 8, '["1/x"]', '["c","d"]'), (2, 2, 1, 9, '[]', '["e"]'), (1, 4, 3, 9, '[]', '["f"]')`);
    });
    const store = open();
    const rows = [
      { after: 0, version: 1, at: 7, commands: [], events: '["a"]' },
      { after: 1, version: 3, at: 8, commands: ['1/x'], events: '["c","d"]' },
      { after: 3, version: 4, at: 9, commands: [], events: '["f"]' },
    ];
    expect((await store.history(CODE))?.rows).toEqual(rows);
    expect(await store.loadAfter(CODE, 3)).toEqual(rows.slice(2));
    expect(await appendTo(store, CODE, row(4))).toBe('committed');
    expect((await store.load(CODE))?.rows).toEqual([...rows, row(4)]);
    await store.remove(CODE);
    expect((await store.load('OTHERONE'))?.rows).toHaveLength(2);
    await store.close();
    withFile((file) => expect(hold(file.prepare('SELECT count(*) FROM log_row')).pluck().get()).toBe(2));
  });

  test('a file of an earlier, unreleased version is left as it was, and the message says what to do', async () => {
    withFile((file) => {
      file.exec(`
        CREATE TABLE room (
          id INTEGER PRIMARY KEY,
          code TEXT NOT NULL UNIQUE,
          version INTEGER NOT NULL,
          touched_at INTEGER NOT NULL
        ) STRICT;
        CREATE TABLE event (
          room INTEGER NOT NULL REFERENCES room (id) ON DELETE CASCADE,
          seq INTEGER NOT NULL,
          cmd_id TEXT,
          kind TEXT NOT NULL,
          body TEXT NOT NULL,
          at INTEGER NOT NULL,
          PRIMARY KEY (room, seq)
        ) STRICT;
        CREATE UNIQUE INDEX event_command ON event (room, cmd_id) WHERE cmd_id IS NOT NULL;
        INSERT INTO room VALUES (1, '${CODE}', 1, 0);
      `);
      file.exec(`PRAGMA application_id = ${0x51756164}; PRAGMA user_version = 2`);
    });
    const before = await readFile(location);
    expect(messageOf()).toMatch(
      /made by an earlier, unreleased version.*choose another DATA_DIR or delete the file/,
    );
    expect((await readFile(location)).equals(before)).toBe(true);
  });

  test('a database of another program is left alone', async () => {
    withFile((file) => file.exec('CREATE TABLE recipe (name TEXT)'));
    expect(messageOf()).toMatch(/another program/);
    withFile((file) => {
      expect(hold(file.prepare('SELECT name FROM sqlite_schema')).all()).toEqual([{ name: 'recipe' }]);
    });
  });

  test('a file that is no database is left alone', async () => {
    const text = 'Dear Wilma, '.repeat(500);
    await writeFile(location, text);
    expect(messageOf()).toMatch(/is not a database/);
    expect(await readFile(location, 'utf8')).toBe(text);
  });

  test('a path that cannot hold a file is named in the message', async () => {
    await writeFile(path.join(place.folder, 'note'), '');
    expect(messageOf(path.join(place.folder, 'note', 'quadrille.db'))).toMatch(/cannot be opened \(EEXIST\)/);
    expect(messageOf(place.folder)).toMatch(/cannot be opened \(SQLITE_CANTOPEN/);
  });
});

describe('a collection of garbage', () => {
  /** Every statement and every database that a store makes from its opening to its closing, and a backup of it. */
  async function madeByStore(): Promise<WeakRef<object>[]> {
    const prepare = vi.spyOn(Database.prototype, 'prepare');
    const unheld = vi.spyOn(Database.prototype, 'pragma');
    const store = open();
    await store.create(CODE, newLog());
    await store.checkWritable();
    expect(backupFile(location, path.join(place.folder, 'copy.db'))).toMatchObject({ ok: true });
    await store.close();
    expect(unheld).not.toHaveBeenCalled();
    const { results, contexts } = prepare.mock;
    const made = [...results.map(({ value }) => value), ...contexts].map((one: object) => new WeakRef(one));
    prepare.mockClear();
    return made;
  }

  test('takes no statement and no database away, which would end the process on some versions of Node', async () => {
    v8.setFlagsFromString('--expose_gc');
    const collect: () => void = vm.runInNewContext('gc');
    const made = await madeByStore();
    // What a turn has made or looked at is not collected in that turn.
    await setImmediate();
    collect();
    expect(made.length).toBeGreaterThan(40);
    expect(made.filter((one) => one.deref() === undefined)).toEqual([]);
  });
});

describe('another process', () => {
  test('while another process holds the file a write is rejected and changes nothing, and the next one is stored', async () => {
    const store = open();
    await store.create(CODE, newLog());
    const holder = hold(new Database(location));
    holder.exec('BEGIN IMMEDIATE');
    const answers = await Promise.allSettled([
      appendTo(store, CODE, row(1)),
      store.create('OTHEROOM', newLog()),
      store.checkWritable(),
    ]);
    expect(answers.map(({ status }) => status)).toEqual(['rejected', 'rejected', 'rejected']);
    expect(await store.load(CODE)).toEqual(newLog());
    holder.exec('ROLLBACK');
    await store.checkWritable();
    expect(await appendTo(store, CODE, row(1))).toBe('committed');
    holder.close();
    await store.close();
  });
});
