// The part of the stores' contract that is about commits: batches, their outcomes, and servers that write at once.
import { describe, expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { appendTo, newLog, row, snapshotAt } from './logs.ts';

const CODE = 'ABCDEFGH';

export interface CommitSubject {
  readonly name: string;
  /** The store of the test that runs. */
  current(): Store;
  /** Another connection to the same logs; null where the store cannot be shared. */
  openSecond(): Promise<Store> | null;
}

export function commitContract({ name, current, openSecond }: CommitSubject): void {
  describe('committing', () => {
    test('a batch appends to each of its logs, and each has an outcome of its own', async () => {
      await current().create('ROOMAAAA', newLog());
      await current().create('ROOMBBBB', newLog(2));
      const outcomes = await current().commit([
        { code: 'ROOMAAAA', row: row(1, 2, ['1/a'], 'Tomas'), snapshot: snapshotAt(3) },
        { code: 'NOSUCHRM', row: row(1), snapshot: null },
        { code: 'ROOMBBBB', row: row(2), snapshot: snapshotAt(3) },
        { code: 'ROOMCCCC', row: row(0), snapshot: null },
      ]);
      expect(outcomes).toEqual(['committed', 'conflict', 'conflict', 'conflict']);
      const both = { ...newLog(), snapshot: snapshotAt(3), rows: [row(0), row(1, 2, ['1/a'], 'Tomas')] };
      expect(await current().history('ROOMAAAA')).toEqual(both);
      expect(await current().history('ROOMBBBB')).toEqual(newLog(2));
      expect(await current().commit([])).toEqual([]);
    });

    test('sixty-four logs are committed in one batch', async () => {
      const codes = Array.from({ length: 64 }, (_, n) => `ROOM${n}`);
      for (const code of codes) await current().create(code, newLog());
      const outcomes = await current().commit(codes.map((code) => ({ code, row: row(1), snapshot: null })));
      expect(new Set(outcomes)).toEqual(new Set(['committed']));
      for (const code of codes) expect(await current().load(code)).toEqual(newLog(1));
    });

    test('a row without events or without a whole time is invalid, and its neighbors are stored', async () => {
      await current().create(CODE, newLog());
      await current().create('NEIGHBOR', newLog());
      await current().create('OTHEROOM', newLog());
      const outcomes = await current().commit([
        { code: CODE, row: { ...row(1), version: 1 }, snapshot: null },
        { code: 'NEIGHBOR', row: row(1, 3), snapshot: null },
        { code: 'OTHEROOM', row: { ...row(1), at: 0.5 }, snapshot: null },
      ]);
      expect(outcomes).toEqual(['invalid', 'committed', 'invalid']);
      expect(await current().load(CODE)).toEqual(newLog());
      expect((await current().load('NEIGHBOR'))?.rows).toEqual([row(0), row(1, 3)]);
      expect(await appendTo(current(), CODE, row(1))).toBe('committed');
    });

    test('an append behind another number than the last changes nothing, its snapshot neither', async () => {
      await current().create(CODE, newLog(2));
      expect(await appendTo(current(), CODE, row(2), snapshotAt(3))).toBe('conflict');
      expect(await appendTo(current(), CODE, row(4), snapshotAt(5))).toBe('conflict');
      expect(await current().load(CODE)).toEqual(newLog(2));
    });

    test('of appends behind one number exactly one wins, a hundred times over', async () => {
      await current().create(CODE, newLog());
      const names = ['Ines', 'Tomas', 'Wilma', 'Odo'];
      for (let last = 1; last <= 100; last++) {
        const answers = await Promise.all(
          names.map((one) => appendTo(current(), CODE, row(last, 1, [`${one}/${last}`], one))),
        );
        expect(answers.toSorted()).toEqual(['committed', 'conflict', 'conflict', 'conflict']);
        const winner = names[answers.indexOf('committed')]!;
        expect(await current().loadAfter(CODE, last)).toEqual([row(last, 1, [`${winner}/${last}`], winner)]);
      }
    });

    test('two servers on one store: one wins each number, both see the same log, and no batch waits for ever', async () => {
      const second = await openSecond();
      if (second === null) return expect(name).toBe('memory');
      const codes = ['ROOMAAAA', 'ROOMBBBB', 'ROOMCCCC'];
      for (const code of codes) await current().create(code, newLog());
      for (let last = 1; last <= 40; last++) {
        const [here, there] = await Promise.all(
          [current(), second].map((side, at) => {
            const batch = codes.map((code) => ({
              code,
              row: row(last, 1, [`${at}/${last}`]),
              snapshot: null,
            }));
            return side.commit(at === 0 ? batch : batch.toReversed());
          }),
        );
        const outcomes = codes.map((_, n) => [here![n]!, there![codes.length - 1 - n]!].toSorted());
        for (const outcome of outcomes) expect(outcome).toEqual(['committed', 'conflict']);
      }
      for (const code of codes) expect(await second.history(code)).toEqual(await current().history(code));
      await second.close();
    });
  });
}
