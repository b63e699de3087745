// JSON that is torn or mistyped: where it goes wrong, held against JSON.parse.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../shared-engine/card/json-text.ts';

function placeIn(text: string, at: number): { readonly line: number; readonly column: number } {
  const lines = text.slice(0, at).split('\n');
  return { line: lines.length, column: lines.at(-1)!.length + 1 };
}

describe('JSON text', () => {
  test('is read as JSON.parse reads it', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(readJson(text)).toEqual({ ok: true, value: JSON.parse(text) });
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  test('cut off anywhere says that it ends there, unless what is left is whole', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 3 }), fc.nat(), (whole, cut) => {
        const text = whole.slice(0, cut % whole.length);
        const read = readJson(text);
        // A number that is cut behind its point or its e is a whole one with a letter too many.
        if (read.ok || /\d(\.|e[+-]?)$/i.test(text)) return;
        expect(read.message).toMatch(/^It ends in line|there should be the rest|there should be a value/);
      }),
      { seed: 12, numRuns: 300 },
    );
  });

  test('with a letter that belongs to no JSON is at fault exactly there, outside of its texts', () => {
    fc.assert(
      fc.property(fc.json({ depthSize: 'medium' }), fc.nat(), (whole, nth) => {
        const pretty = JSON.stringify(JSON.parse(whole), null, 2);
        // Texts may hold any letter; what stands between them may not.
        const places = [...pretty.replace(/"(?:[^"\\]|\\.)*"/g, (text) => '"'.repeat(text.length))].flatMap(
          (letter, at) => (/[\s,:[\]{}]/.test(letter) ? [at] : []),
        );
        const at = places[nth % places.length] ?? 0;
        const read = readJson(`${pretty.slice(0, at)}#${pretty.slice(at)}`);
        expect(read).toMatchObject({ ok: false, ...placeIn(pretty, at) });
      }),
      { seed: 13, numRuns: 300 },
    );
  });

  test.each([
    ['{"a":1,}', 8, 'a name in quotes'],
    ['{"a":1 "b":2}', 8, 'a comma or "}"'],
    ['[1 2]', 4, 'a comma or "]"'],
    ['{"a" 1}', 6, 'a colon'],
    ['[01]', 3, 'a comma or "]"'],
    ['["a\tb"]', 4, 'the rest of a text in quotes'],
    ['["\\x"]', 3, 'the rest of a text in quotes'],
    ['{}}', 3, 'nothing more'],
    ["{'a':1}", 2, 'a name in quotes or "}"'],
  ])('%s should have %i: %s', (text, column, words) => {
    expect(readJson(text)).toEqual({
      ok: false,
      line: 1,
      column,
      message: `In line 1, column ${column}, there should be ${words}.`,
    });
  });
});
