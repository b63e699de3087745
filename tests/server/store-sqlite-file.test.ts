// The SQLite file itself: what a power cut, another program, a newer version or a lock may do to it.
import { copyFile, mkdir, readFile, stat, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { openSqlite } from '../../server/store/sqlite.ts';
import { temporaryFolder } from '../kit/temporary.ts';
import { following, opening } from '../kit/logs.ts';
import { storeOf } from '../kit/stores.ts';

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

function sentenceOf(where = location): string {
  const opened = openSqlite(where);
  return opened.ok ? 'opened' : opened.message;
}

function withFile(work: (file: Database.Database) => void): void {
  const file = new Database(location);
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
    return log;
  }

  const walSize = async () => (await stat(`${location}-wal`)).size;

  test('right after an acknowledgement everything acknowledged is there, without closing', async () => {
    const store = open();
    await store.create(CODE, opening());
    for (let last = 1; last < 40; last++) {
      await store.append(CODE, last, following(last, 1, `c${last}`));
      if (last % 8 === 0) expect(await logAfter(async () => {})).toHaveLength(last + 1);
    }
    await store.close();
  });

  test('a write torn anywhere in its pages is gone whole, and all before it is there', async () => {
    const store = open();
    await store.create(CODE, opening());
    await store.append(CODE, 1, following(1, 3, 'c1'));
    const before = await walSize();
    await store.append(CODE, 4, following(4, 60, 'c2'));
    const after = await walSize();
    const kept = [...opening(), ...following(1, 3, 'c1')];
    expect(after - before).toBeGreaterThan(4 * 4096);
    for (let cut = before; cut < after; cut += 1021) {
      expect(await logAfter((wal) => truncate(wal, cut))).toEqual(kept);
    }
    expect(await logAfter((wal) => truncate(wal, after - 1))).toEqual(kept);
    expect(await logAfter(async () => {})).toEqual([...kept, ...following(4, 60, 'c2')]);
    await store.close();
  });

  test('pages that arrived as rubbish are not taken for a write', async () => {
    const store = open();
    await store.create(CODE, opening(2));
    const before = await walSize();
    await store.append(CODE, 3, following(3, 30));
    const after = await walSize();
    for (const at of [before + 30, before + 2000, after - 10]) {
      const log = await logAfter(async (wal) => {
        const bytes = await readFile(wal);
        bytes[at]! ^= 0xff;
        await writeFile(wal, bytes);
      });
      expect(log).toEqual(opening(2));
    }
    await store.close();
  });

  test('the store goes on behind the cut', async () => {
    const store = open();
    await store.create(CODE, opening(1));
    const before = await walSize();
    await store.append(CODE, 2, following(2, 5));
    const restarted = await afterPowerCut((wal) => truncate(wal, before + 5000));
    expect(await restarted.append(CODE, 7, following(7))).toBe('conflict');
    expect(await restarted.append(CODE, 2, following(2, 1, 'c9'))).toBe('kept');
    expect(await restarted.load(CODE)).toEqual([...opening(1), ...following(2, 1, 'c9')]);
    await Promise.all([store.close(), restarted.close()]);
  });
});

describe('opening', () => {
  test('creates the folders on the way and keeps every commit durable', async () => {
    const deep = path.join(place.folder, 'a', 'b', 'quadrille.db');
    await open(deep).close();
    const file = new Database(deep);
    expect(file.pragma('journal_mode', { simple: true })).toBe('wal');
    file.close();
  });

  test('a file of a newer version is left alone, and the sentence says what to do', async () => {
    await open().close();
    withFile((file) => file.pragma('user_version = 99'));
    expect(sentenceOf()).toMatch(/written by a newer version.*schema 99.*Start that version/);
    withFile((file) => expect(file.pragma('user_version', { simple: true })).toBe(99));
  });

  test('a database of another program is left alone', async () => {
    withFile((file) => file.exec('CREATE TABLE recipe (name TEXT)'));
    expect(sentenceOf()).toMatch(/another program/);
    withFile((file) => {
      expect(file.prepare('SELECT name FROM sqlite_schema').all()).toEqual([{ name: 'recipe' }]);
    });
  });

  test('a file that is no database is left alone', async () => {
    const text = 'Dear Wilma, '.repeat(500);
    await writeFile(location, text);
    expect(sentenceOf()).toMatch(/is not a database/);
    expect(await readFile(location, 'utf8')).toBe(text);
  });

  test('a place that cannot hold a file is named', async () => {
    await writeFile(path.join(place.folder, 'note'), '');
    expect(sentenceOf(path.join(place.folder, 'note', 'quadrille.db'))).toMatch(
      /cannot be opened \(EEXIST\)/,
    );
    expect(sentenceOf(place.folder)).toMatch(/cannot be opened \(SQLITE_CANTOPEN/);
  });
});

describe('another process', () => {
  test('that holds the file has a write rejected, nothing changed, and the next one kept', async () => {
    const store = open();
    await store.create(CODE, opening());
    const holder = new Database(location);
    holder.exec('BEGIN IMMEDIATE');
    const answers = await Promise.allSettled([
      store.append(CODE, 1, following(1)),
      store.create('OTHEROOM', opening()),
    ]);
    expect(answers.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    expect(await store.load(CODE)).toEqual(opening());
    holder.exec('ROLLBACK');
    expect(await store.append(CODE, 1, following(1))).toBe('kept');
    holder.close();
    await store.close();
  });

  test('of a newer version that wrote an unknown event has the room rejected, without a word of it', async () => {
    const store = open();
    await store.create(CODE, opening(1));
    withFile((file) => {
      file.exec(`UPDATE event SET body = '{"kind":"tea-served","secret":"bam-1"}' WHERE seq = 2`);
    });
    const failure = await store.load(CODE).then(String, String);
    expect(failure).toMatch(/cannot be read.*newer version/);
    expect(failure).not.toMatch(/bam-1|tea/);
    await store.close();
  });
});
