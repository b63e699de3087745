// The part of the stores' contract that is about texts: whatever is written in them, they are data and nothing else.
import { describe, expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { appendTo, newLog, row } from './logs.ts';

const CODE = 'ABCDEFGH';
const TEXTS = [
  "Robert'); DROP TABLE log;--",
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

export function textContract({ current, reopened }: { current(): Store; reopened(): Promise<Store> }): void {
  describe('texts', () => {
    test.each(TEXTS.map((text) => [text]))('a name is data and nothing else: %j', async (text) => {
      await current().create(CODE, newLog());
      const snapshot = { version: 2, commands: [text], state: JSON.stringify({ name: text }) };
      expect(await appendTo(current(), CODE, row(1, 1, ['1/a'], text), snapshot)).toBe('committed');
      const rows = [row(0), row(1, 1, ['1/a'], text)];
      expect(await (await reopened()).history(CODE)).toEqual({ kind: 'room', snapshot, rows });
    });

    test('commands and codes are data too, each apart from all the others', async () => {
      const store = current();
      const ids = [...TEXTS.map((text) => text.slice(0, 36)), 'half \udc00 pair', 'half \ufffd pair', ''];
      await store.create(CODE, newLog());
      for (const [index, id] of ids.entries()) {
        expect(await appendTo(store, CODE, row(1 + index, 1, [id]))).toBe('committed');
        expect(await store.create(`room ${id}`, newLog(index))).toBe('created');
      }
      const log = await store.load(CODE);
      expect(log?.rows.slice(1).flatMap(({ commands }) => commands)).toEqual(ids);
      for (const [index, id] of ids.entries()) {
        expect(await store.load(`room ${id}`)).toEqual(newLog(index));
      }
    });
  });
}
