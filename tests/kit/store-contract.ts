// What every store promises, asked of each of them: the one suite that memory, SQLite and PostgreSQL all pass.
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { following, LOG_START, opening } from './logs.ts';

/** A place where a store keeps its rooms; opened again it still has them. */
export interface StorePlace {
  open(): Promise<Store>;
  /** Another connection to the same rooms, as a second server has it; null where the store cannot be shared. */
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

    describe('keeping', () => {
      test('a new room is loaded as it was created', async () => {
        expect(await store.create(CODE, opening(3))).toBe('kept');
        expect(await store.load(CODE)).toEqual(opening(3));
      });

      test('a code is given once; the first room stays as it was', async () => {
        await store.create(CODE, opening());
        expect(await store.create(CODE, opening(5))).toBe('code-taken');
        expect(await store.load(CODE)).toEqual(opening());
      });

      test('of ten rooms created at once with one code one is kept, whole', async () => {
        const answers = await Promise.all(
          Array.from({ length: 10 }, (_, more) => store.create(CODE, opening(more))),
        );
        expect(answers.filter((answer) => answer === 'kept')).toHaveLength(1);
        expect(await store.load(CODE)).toEqual(opening(answers.indexOf('kept')));
      });

      test('more events come behind the last one', async () => {
        await store.create(CODE, opening());
        expect(await store.append(CODE, 1, following(1, 2))).toBe('kept');
        expect(await store.append(CODE, 3, following(3))).toBe('kept');
        expect(await store.load(CODE)).toEqual(opening(3));
      });

      test('what was loaded once is not changed by a later append', async () => {
        await store.create(CODE, opening());
        const before = await store.load(CODE);
        await store.append(CODE, 1, following(1));
        expect(before).toEqual(opening());
      });

      test('rooms do not mix', async () => {
        await Promise.all(['ROOMAAAA', 'ROOMBBBB'].map((code) => store.create(code, opening())));
        await Promise.all([
          store.append('ROOMAAAA', 1, following(1, 1, 'c1', 'Tomas')),
          store.append('ROOMBBBB', 1, following(1, 1, 'c1', 'Wilma')),
        ]);
        expect(await store.load('ROOMAAAA')).toEqual([...opening(), ...following(1, 1, 'c1', 'Tomas')]);
        expect(await store.load('ROOMBBBB')).toEqual([...opening(), ...following(1, 1, 'c1', 'Wilma')]);
      });

      test('only the events behind a number are loaded when asked so', async () => {
        await store.create(CODE, opening(5));
        expect(await store.load(CODE, 4)).toEqual(following(4, 2));
        expect(await store.load(CODE, 6)).toEqual([]);
      });

      test('an unknown room is null, and nothing can be appended to it', async () => {
        expect(await store.load(CODE)).toBeNull();
        expect(await store.load(CODE, 3)).toBeNull();
        expect(await store.append(CODE, 0, opening())).toBe('conflict');
        expect(await store.append(CODE, 1, following(1))).toBe('conflict');
        expect(await store.count()).toBe(0);
      });

      test('a log of 5,000 events comes back whole and in order', async () => {
        await store.create(CODE, opening());
        await store.append(CODE, 1, following(1, 2000));
        await store.append(CODE, 2001, following(2001, 2999));
        expect(await store.load(CODE)).toEqual(opening(4999));
        expect(await store.load(CODE, 4990)).toEqual(following(4990, 10));
      });
    });

    describe('conflicts', () => {
      test('an append behind another number than the last changes nothing', async () => {
        await store.create(CODE, opening(2));
        expect(await store.append(CODE, 2, following(2))).toBe('conflict');
        expect(await store.append(CODE, 4, following(4))).toBe('conflict');
        expect(await store.load(CODE)).toEqual(opening(2));
      });

      test('of appends behind one number exactly one wins, a hundred times over', async () => {
        await store.create(CODE, opening());
        const names = ['Ines', 'Tomas', 'Wilma', 'Odo'];
        for (let last = 1; last <= 100; last++) {
          const answers = await Promise.all(
            names.map((rival) => store.append(CODE, last, following(last, 1, `${rival}-${last}`, rival))),
          );
          expect(answers.toSorted()).toEqual(['conflict', 'conflict', 'conflict', 'kept']);
          const winner = names[answers.indexOf('kept')]!;
          expect(await store.load(CODE, last)).toEqual(following(last, 1, `${winner}-${last}`, winner));
        }
      });

      test('a command is kept once, however often it comes', async () => {
        await store.create(CODE, opening());
        await store.append(CODE, 1, following(1, 2, 'c1'));
        expect(await store.append(CODE, 3, following(3, 1, 'c1'))).toBe('repeated');
        expect(await store.append(CODE, 1, following(1, 2, 'c1'))).toBe('conflict');
        expect(await store.load(CODE)).toEqual([...opening(), ...following(1, 2, 'c1')]);
        expect(await store.append(CODE, 3, following(3, 1, 'c2'))).toBe('kept');
      });

      test('an append is all or nothing, and one that is refused leaves its neighbours alone', async () => {
        await store.create(CODE, opening());
        await store.create('NEIGHBOR', opening());
        await store.append(CODE, 1, following(1, 1, 'c1'));
        const answers = await Promise.all([
          store.append(CODE, 2, [...following(2, 2), ...following(4, 1, 'c1')]),
          store.append('NEIGHBOR', 1, following(1, 3)),
        ]);
        expect(answers).toEqual(['repeated', 'kept']);
        expect(await store.load(CODE)).toHaveLength(2);
        expect(await store.load('NEIGHBOR')).toEqual(opening(3));
      });

      test('events with wrong numbers are turned away, and the write beside them is kept', async () => {
        await store.create(CODE, opening());
        const [gap, empty, good] = await Promise.allSettled([
          store.append(CODE, 1, following(2)),
          store.append(CODE, 1, []),
          store.append(CODE, 1, following(1)),
        ]);
        expect([gap.status, empty.status, good.status]).toEqual(['rejected', 'rejected', 'fulfilled']);
        await expect(store.create('OTHEROOM', following(1))).rejects.toThrow();
        expect(await store.load(CODE)).toEqual(opening(1));
        expect(await store.count()).toBe(1);
      });

      test('two servers on one store: one wins each number, both see the same log', async () => {
        if (place.openSecond === null) return expect(name).toBe('memory');
        const second = await place.openSecond();
        await store.create(CODE, opening());
        for (let last = 1; last <= 40; last++) {
          const answers = await Promise.all(
            [store, second].map((side, at) => side.append(CODE, last, following(last, 1, `${at}-${last}`))),
          );
          expect(answers.toSorted()).toEqual(['conflict', 'kept']);
        }
        expect(await second.load(CODE)).toEqual(await store.load(CODE));
        await second.close();
      });
    });

    describe('amending', () => {
      test('changes what the named events say and nothing else, for good', async () => {
        await store.create(CODE, opening(3));
        await store.create('OTHER', opening(3));
        const [first, second, third, fourth] = opening(3);
        const said = { ...third!, event: { kind: 'ready', seat: 1, ready: true } } as const;
        await store.amend(CODE, [said]);
        expect(await (await reopened()).load(CODE)).toEqual([first, second, said, fourth]);
        expect(await store.load('OTHER')).toEqual(opening(3));
        expect(await store.append(CODE, 4, following(4))).toBe('kept');
      });

      test('what is not kept changes nothing', async () => {
        await store.create(CODE, opening(1));
        await store.amend('NOBODY', opening(1));
        await store.amend(CODE, following(7));
        expect(await store.load(CODE)).toEqual(opening(1));
      });
    });

    describe('the list of rooms', () => {
      test('removing a room frees its code and leaves the others', async () => {
        await Promise.all([CODE, 'OTHEROOM'].map((code) => store.create(code, opening(2))));
        await store.remove(CODE);
        expect(await store.load(CODE)).toBeNull();
        expect(await store.append(CODE, 3, following(3))).toBe('conflict');
        expect(await store.create(CODE, opening())).toBe('kept');
        expect(await store.load(CODE)).toEqual(opening());
        expect(await store.load('OTHEROOM')).toEqual(opening(2));
        await store.remove('NOSUCHRM');
        expect(await store.count()).toBe(2);
      });

      test('versions are the numbers of the last events of the rooms that are kept', async () => {
        await store.create('ROOMAAAA', opening());
        await store.create('ROOMBBBB', opening(6));
        await store.append('ROOMAAAA', 1, following(1, 2));
        const versions = await store.versions(['ROOMBBBB', 'NOSUCHRM', 'ROOMAAAA']);
        expect(Object.fromEntries(versions)).toEqual({ ROOMAAAA: 3, ROOMBBBB: 7 });
        expect((await store.versions([])).size).toBe(0);
      });

      test('codes come page by page in the order of their bytes', async () => {
        const codes = ['B2', 'A', 'a', 'Ä', '😀', '\uffee', 'AA', 'Z'];
        await Promise.all(codes.map((code) => store.create(code, opening())));
        const first = await store.codes(null, 5);
        expect(first).toEqual(['A', 'AA', 'B2', 'Z', 'a']);
        expect(await store.codes('a', 5)).toEqual(['Ä', '\uffee', '😀']);
        expect(await store.codes('😀', 5)).toEqual([]);
        expect(await store.codes('AAA', 1)).toEqual(['B2']);
      });

      test('rooms whose last event is older than a moment are removed, and counted', async () => {
        await store.create('OLDROOMA', opening());
        await store.create('OLDROOMB', opening(1));
        await store.create('NEWROOMA', opening(4));
        await store.append('OLDROOMA', 1, following(1, 1));
        expect(await store.removeOlder(LOG_START + 1000)).toBe(0);
        expect(await store.removeOlder(LOG_START + 1001)).toBe(2);
        expect(await store.codes(null, 9)).toEqual(['NEWROOMA']);
        expect(await store.load('NEWROOMA')).toEqual(opening(4));
      });
    });

    describe('texts', () => {
      const TEXTS = [
        "Robert'); DROP TABLE room;--",
        '" OR 1=1 --',
        '%_\\ $1 ? :name @x',
        'ends with \\',
        'Ἰοκάστη 麻雀 émile e\u0301mile',
        '🀄\u{1F004} 👩‍👩‍👧',
        'line\nbreak\ttab\r',
        'zero\u0000byte',
        'half \ud800 pair',
        '__proto__',
        'null',
        '\u202Eright to left',
        'long '.repeat(2000),
      ];

      test.each(TEXTS.map((text) => [text]))('a name is data and nothing else: %j', async (text) => {
        await store.create(CODE, opening());
        expect(await store.append(CODE, 1, following(1, 1, 'c1', text))).toBe('kept');
        expect(await (await reopened()).load(CODE)).toEqual([...opening(), ...following(1, 1, 'c1', text)]);
      });

      test('commands and codes are data too, each apart from all the others', async () => {
        const ids = [...TEXTS.map((text) => text.slice(0, 36)), 'half \udc00 pair', 'half \ufffd pair', ''];
        await store.create(CODE, opening());
        for (const [index, id] of ids.entries()) {
          expect(await store.append(CODE, 1 + index, following(1 + index, 1, id))).toBe('kept');
          expect(await store.create(`room ${id}`, opening(index))).toBe('kept');
        }
        const log = await store.load(CODE);
        expect(log?.slice(1).map(({ command }) => command)).toEqual(ids);
        for (const [index, id] of ids.entries()) {
          expect(await store.load(`room ${id}`)).toEqual(opening(index));
          expect(await store.append(CODE, 1 + ids.length, following(1 + ids.length, 1, id))).toBe('repeated');
        }
      });
    });

    describe('closing', () => {
      test('everything answered is there after opening again', async () => {
        await store.create(CODE, opening());
        await store.append(CODE, 1, following(1, 3, 'c1'));
        await reopened();
        expect(await store.load(CODE)).toEqual([...opening(), ...following(1, 3, 'c1')]);
        expect(await store.append(CODE, 4, following(4, 1, 'c1'))).toBe('repeated');
        expect(await store.append(CODE, 4, following(4))).toBe('kept');
      });

      test('writes begun before closing are kept', async () => {
        const begun = Promise.all(['ROOMAAAA', 'ROOMBBBB'].map((code) => store.create(code, opening(1))));
        await store.close();
        expect(await begun).toEqual(['kept', 'kept']);
        store = await place.open();
        expect(await store.count()).toBe(2);
      });

      test('a closed store rejects whatever is asked', async () => {
        await store.create(CODE, opening());
        await store.close();
        await expect(store.load(CODE)).rejects.toThrow();
        await expect(store.append(CODE, 1, following(1))).rejects.toThrow();
        await expect(store.create('OTHEROOM', opening())).rejects.toThrow();
        await expect(store.count()).rejects.toThrow();
        store = await place.open();
        expect(await store.load(CODE)).toEqual(opening());
      });
    });
  });
}
