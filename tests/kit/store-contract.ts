// What every store promises, asked of each of them: the one suite that memory, SQLite and PostgreSQL all pass.
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { LogRow, Store } from '../../server/ports.ts';
import { bytesOf } from '../../server/store/stored-text.ts';
import { appendTo, LOG_START, newLog, row, snapshotAt } from './logs.ts';
import { commitContract } from './store-commits.ts';
import { textContract } from './store-texts.ts';

/** A place where a store has its logs; opened again it still has them. */
export interface StorePlace {
  open(): Promise<Store>;
  /** Another connection to the same logs, as a second server has it; null where the store cannot be shared. */
  openSecond: (() => Promise<Store>) | null;
  discard(): Promise<void>;
}

export interface StoreSubject {
  readonly name: string;
  /** Runs once before all tests, and its answer after them. */
  prepare(): Promise<() => Promise<void>>;
  newPlace(): Promise<StorePlace>;
}

const CODE = 'ABCDEFGH';

export function storeContract({ name, prepare, newPlace }: StoreSubject): void {
  describe(`a store in ${name}`, () => {
    let tidyUp: () => Promise<void>;
    let place: StorePlace;
    let store: Store;
    beforeAll(async () => {
      tidyUp = await prepare();
    });
    afterAll(() => tidyUp());
    beforeEach(async () => {
      place = await newPlace();
      store = await place.open();
    });
    afterEach(async () => {
      await store.close();
      await place.discard();
    });

    async function reopened(): Promise<Store> {
      await store.close();
      store = await place.open();
      return store;
    }

    describe('creating', () => {
      test('a new log is loaded as it was created, of every kind', async () => {
        for (const kind of ['room', 'same-deal', 'class', 'class-table', 'published', 'club'] as const) {
          const log = { ...newLog(3), kind, snapshot: snapshotAt(2) };
          expect(await store.create(kind, log)).toBe('created');
          expect(await store.history(kind)).toEqual(log);
        }
      });

      test('a code is given once, and the first log stays as it was', async () => {
        await store.create(CODE, newLog());
        expect(await store.create(CODE, newLog(5))).toBe('code-taken');
        expect(await store.load(CODE)).toEqual(newLog());
      });

      test('of ten logs created at once with one code one is stored, whole', async () => {
        const answers = await Promise.all(
          Array.from({ length: 10 }, (_, more) => store.create(CODE, newLog(more))),
        );
        expect(answers.filter((answer) => answer === 'created')).toHaveLength(1);
        expect(await store.load(CODE)).toEqual(newLog(answers.indexOf('created')));
      });

      test('a log with a gap, without its beginning or without rows is rejected', async () => {
        const rows = newLog(3).rows;
        for (const wrong of [[], rows.slice(1), [rows[0]!, rows[2]!]]) {
          await expect(store.create(CODE, { ...newLog(), rows: wrong })).rejects.toThrow();
        }
        expect(await store.count()).toBe(0);
        const compacted = { ...newLog(), snapshot: snapshotAt(2), rows: [rows[0]!, rows[2]!] };
        expect(await store.create(CODE, compacted)).toBe('created');
        expect(await store.history(CODE)).toEqual(compacted);
      });
    });

    describe('loading', () => {
      test('begins with the first row and goes on behind the latest snapshot', async () => {
        await store.create(CODE, newLog());
        await appendTo(store, CODE, row(1, 2));
        await appendTo(store, CODE, row(3, 2), snapshotAt(4));
        await appendTo(store, CODE, row(5));
        const all = [row(0), row(1, 2), row(3, 2), row(5)];
        const loaded = { kind: 'room', snapshot: snapshotAt(4), rows: [row(0), row(3, 2), row(5)] };
        expect(await (await reopened()).load(CODE)).toEqual(loaded);
        expect(await store.history(CODE)).toEqual({ ...loaded, rows: all });
        await appendTo(store, CODE, row(6), snapshotAt(7));
        expect(await store.load(CODE)).toEqual({ ...loaded, snapshot: snapshotAt(7), rows: [row(0)] });
      });

      test('what was loaded once is not changed by a later append', async () => {
        await store.create(CODE, newLog());
        const before = await store.load(CODE);
        await appendTo(store, CODE, row(1));
        expect(before).toEqual(newLog());
      });

      test('only the rows with events behind a number are loaded when asked so', async () => {
        await store.create(CODE, newLog(3));
        await appendTo(store, CODE, row(4, 3), snapshotAt(7));
        expect(await store.loadAfter(CODE, 2)).toEqual([row(2), row(3), row(4, 3)]);
        expect(await store.loadAfter(CODE, 5)).toEqual([row(4, 3)]);
        expect(await store.loadAfter(CODE, 7)).toEqual([]);
      });

      test('an unknown code is null everywhere, and nothing can be appended to it', async () => {
        expect(await store.load(CODE)).toBeNull();
        expect(await store.loadAfter(CODE, 3)).toBeNull();
        expect(await store.history(CODE)).toBeNull();
        expect(await appendTo(store, CODE, row(0))).toBe('conflict');
        expect(await appendTo(store, CODE, row(1))).toBe('conflict');
        expect(await store.count()).toBe(0);
      });

      test('a log of 5,001 events in 201 rows comes back whole and in order', async () => {
        await store.create(CODE, newLog());
        const rows = Array.from({ length: 200 }, (_, n) => row(1 + 25 * n, 25));
        for (const one of rows) await appendTo(store, CODE, one);
        expect((await store.load(CODE))?.rows).toEqual([row(0), ...rows]);
      });
    });

    commitContract({ name, current: () => store, openSecond: () => place.openSecond?.() ?? null });

    describe('rewriting', () => {
      test('changes the events of the named rows and the snapshot and nothing else, for good', async () => {
        await store.create(CODE, { ...newLog(3), snapshot: snapshotAt(4) });
        await store.create('OTHER', newLog(3));
        const [first, second, third, fourth] = newLog(3).rows;
        const changed = { ...third!, events: '[{"kind":"seat-taken","name":"Somebody"}]' };
        const hidden = { ...snapshotAt(4), state: '{"name":"Somebody"}' };
        await store.rewrite(CODE, [{ ...changed, at: 1, commands: ['x'] }], hidden);
        const rows = [first, second, changed, fourth];
        expect(await (await reopened()).history(CODE)).toEqual({ kind: 'room', snapshot: hidden, rows });
        expect(await store.history('OTHER')).toEqual(newLog(3));
        expect(await appendTo(store, CODE, row(4))).toBe('committed');
      });

      test('leaves a newer snapshot alone, and does nothing where nothing is stored', async () => {
        await store.create(CODE, { ...newLog(3), snapshot: snapshotAt(4) });
        await store.rewrite(CODE, [], snapshotAt(2, '"old"'));
        await store.rewrite(CODE, [row(7)], null);
        await store.rewrite('NOBODY', newLog(1).rows, snapshotAt(1));
        expect(await store.history(CODE)).toEqual({ ...newLog(3), snapshot: snapshotAt(4) });
        expect(await store.count()).toBe(1);
      });
    });

    describe('the list of logs', () => {
      test('removing a log frees its code and leaves the others', async () => {
        const log = { ...newLog(2), snapshot: snapshotAt(3) };
        await Promise.all([CODE, 'OTHEROOM'].map((code) => store.create(code, log)));
        await store.remove(CODE);
        expect(await store.load(CODE)).toBeNull();
        expect(await appendTo(store, CODE, row(3))).toBe('conflict');
        expect(await store.create(CODE, newLog())).toBe('created');
        expect(await store.load(CODE)).toEqual(newLog());
        expect(await store.history('OTHEROOM')).toEqual(log);
        await store.remove('NOSUCHRM');
        expect(await store.count()).toBe(2);
      });

      test('versions are the numbers of the last events of the logs that are stored', async () => {
        await store.create('ROOMAAAA', newLog());
        await store.create('ROOMBBBB', newLog(6));
        await appendTo(store, 'ROOMAAAA', row(1, 2));
        const versions = await store.versions(['ROOMBBBB', 'NOSUCHRM', 'ROOMAAAA']);
        expect(Object.fromEntries(versions)).toEqual({ ROOMAAAA: 3, ROOMBBBB: 7 });
        expect((await store.versions([])).size).toBe(0);
      });

      test('codes come page by page in the order of their bytes', async () => {
        const codes = ['B2', 'A', 'a', 'Ä', '😀', '\uffee', 'AA', 'Z'];
        await Promise.all(codes.map((code) => store.create(code, newLog())));
        const first = await store.codes(null, 5);
        expect(first).toEqual(['A', 'AA', 'B2', 'Z', 'a']);
        expect(await store.codes('a', 5)).toEqual(['Ä', '\uffee', '😀']);
        expect(await store.codes('😀', 5)).toEqual([]);
        expect(await store.codes('AAA', 1)).toEqual(['B2']);
      });

      test('logs whose last row is older than a moment are removed, and counted', async () => {
        await store.create('OLDROOMA', newLog());
        await store.create('OLDROOMB', newLog(1));
        await store.create('NEWROOMA', newLog(4));
        await appendTo(store, 'OLDROOMA', row(1));
        const oldest = (ms: number, classes = 0) => ({ rooms: LOG_START + ms, classes: LOG_START + classes });
        expect(await store.removeOlder(oldest(1000))).toBe(0);
        expect(await store.removeOlder(oldest(1001))).toBe(2);
        expect(await store.codes(null, 9)).toEqual(['NEWROOMA']);
        // A class and its tables are older than a room may be, and so is a club's page.
        await store.create('OLDCLASS', { ...newLog(), kind: 'class' });
        await store.create('ITSTABLE', { ...newLog(), kind: 'class-table' });
        await store.create('CLUBPAGE', { ...newLog(), kind: 'club' });
        await store.create('SAMEDEAL', { ...newLog(), kind: 'same-deal' });
        expect(await store.removeOlder(oldest(1, 0))).toBe(1);
        expect(await store.codes(null, 9)).toEqual(['CLUBPAGE', 'ITSTABLE', 'NEWROOMA', 'OLDCLASS']);
        expect(await store.removeOlder(oldest(0, 1))).toBe(3);
        expect(await store.load('NEWROOMA')).toEqual(newLog(4));
      });
    });

    describe('the size of a store', () => {
      test('LM4 the logs touched longest ago are removed until the rest is small enough, and counted', async () => {
        const bytes = (log: { rows: readonly LogRow[] }) =>
          log.rows.reduce((sum, one) => sum + bytesOf(one), 0);
        await store.create('OLDROOMA', newLog(1));
        await store.create('NEWROOMA', newLog(3));
        await store.create('OLDROOMB', { ...newLog(1), snapshot: snapshotAt(2, '"a long state"') });
        await appendTo(store, 'OLDROOMA', row(2, 3, ['1/麻雀'], '麻雀'));
        const newer = bytes(newLog(3));
        const second = bytes(newLog(1)) + bytesOf(row(2, 3, ['1/麻雀'], '麻雀'));
        expect(await store.removeBeyond(newer + second + bytes(newLog(1)))).toBe(0);
        expect(await store.removeBeyond(newer + second + bytes(newLog(1)) - 1)).toBe(1);
        expect(await store.codes(null, 9)).toEqual(['NEWROOMA', 'OLDROOMA']);
        expect(await store.removeBeyond(newer + second)).toBe(0);
        expect(await store.removeBeyond(newer + second - 1)).toBe(1);
        expect(await store.codes(null, 9)).toEqual(['NEWROOMA']);
        expect(await store.removeBeyond(newer - 1)).toBe(1);
        expect(await store.count()).toBe(0);
      });
    });

    test('LM4 what all logs hold is known whatever is done to them, also after a restart', async () => {
      const bytes = (rows: readonly LogRow[]) => rows.reduce((sum, one) => sum + bytesOf(one), 0);
      expect(await store.removeBeyond(0)).toBe(0);
      const grown = [row(1, 2), row(3, 40)];
      await store.create(CODE, newLog());
      expect(await store.create(CODE, newLog(9))).toBe('code-taken');
      await store.create('GONESOON', newLog(5));
      await store.create('OLDCLASS', { ...newLog(2), kind: 'class' });
      expect(await appendTo(store, CODE, grown[0]!)).toBe('committed');
      expect(await appendTo(store, CODE, grown[0]!)).toBe('conflict');
      expect(await appendTo(store, CODE, { ...grown[1]!, version: 2 })).toBe('invalid');
      await store.remove('GONESOON');
      await store.remove('GONESOON');
      const all = bytes([...newLog().rows, ...newLog(2).rows, grown[0]!]);
      expect(await store.removeBeyond(all)).toBe(0);
      await reopened();
      expect(await appendTo(store, CODE, grown[1]!)).toBe('committed');
      expect(await store.removeBeyond(all + bytesOf(grown[1]!))).toBe(0);
      expect(await store.removeOlder({ rooms: 0, classes: LOG_START + 2001 })).toBe(1);
      const left = bytes([...newLog().rows, ...grown]);
      expect(await store.removeBeyond(left)).toBe(0);
      expect(await store.removeBeyond(left - 1)).toBe(1);
      expect(await store.count()).toBe(0);
    });

    textContract({ current: () => store, reopened });

    test('asking whether anything can be stored changes nothing', async () => {
      await store.create(CODE, newLog(1));
      await store.checkWritable();
      await store.checkWritable();
      await reopened();
      expect(await store.history(CODE)).toEqual(newLog(1));
      expect(await store.count()).toBe(1);
    });

    describe('closing', () => {
      test('everything answered is there after opening again', async () => {
        await store.create(CODE, newLog());
        await appendTo(store, CODE, row(1, 3, ['1/a']), snapshotAt(2));
        await reopened();
        const rows = [row(0), row(1, 3, ['1/a'])];
        expect(await store.history(CODE)).toEqual({ kind: 'room', snapshot: snapshotAt(2), rows });
        expect(await appendTo(store, CODE, row(4))).toBe('committed');
      });

      test('writes begun before closing are stored', async () => {
        const begun = Promise.all(['ROOMAAAA', 'ROOMBBBB'].map((code) => store.create(code, newLog(1))));
        await store.close();
        expect(await begun).toEqual(['created', 'created']);
        store = await place.open();
        expect(await store.count()).toBe(2);
      });

      test('a closed store rejects whatever is asked', async () => {
        await store.create(CODE, newLog());
        await store.close();
        await expect(store.load(CODE)).rejects.toThrow();
        await expect(appendTo(store, CODE, row(1))).rejects.toThrow();
        await expect(store.create('OTHEROOM', newLog())).rejects.toThrow();
        await expect(store.count()).rejects.toThrow();
        await expect(store.checkWritable()).rejects.toThrow();
        store = await place.open();
        expect(await store.load(CODE)).toEqual(newLog());
      });
    });
  });
}
