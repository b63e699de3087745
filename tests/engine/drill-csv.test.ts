// The report as files: CSV by RFC 4180 that no spreadsheet runs as a formula, and JSON that reads back.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { classReport } from '../../shared-engine/drill/report/class-report.ts';
import { csvText } from '../../shared-engine/drill/report/csv.ts';
import {
  aimsCsv,
  choicesCsv,
  mistakesCsv,
  reportJson,
} from '../../shared-engine/drill/report/report-files.ts';
import { classOf } from '../kit/classes.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';

/** A reader of RFC 4180, written apart from the writer. */
function cellsOf(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      for (at++; text[at] !== '"' || text[at + 1] === '"'; at++) {
        if (text[at] === '"') at++;
        cell += text[at];
      }
      at++;
    } else {
      for (; text[at] !== ',' && text[at] !== '\r'; at++) cell += text[at];
    }
    row.push(cell);
    if (text[at] === ',') at++;
    else {
      expect(text.slice(at, at + 2)).toBe('\r\n');
      at += 2;
      rows.push(row);
      row = [];
    }
  }
  return rows;
}

describe('CSV (RFC 4180, section 2)', () => {
  test('2.1 and 2.4: lines end in CR LF, cells stand between commas', () => {
    expect(
      csvText([
        ['a', 'b'],
        [1, null],
        [0.5, -2],
      ]),
    ).toBe('a,b\r\n1,\r\n0.5,-2\r\n');
  });

  test('2.6 and 2.7: commas, quotes and line breaks stand in quotes, quotes doubled', () => {
    expect(csvText([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvText([['aaa', 'b"bb', 'c,c']])).toBe('aaa,"b""bb","c,c"\r\n');
  });

  test.each(['=1+1', '+1', '-1', '@sum', '\tx', '\rx', ' =1', '＝1'])(
    '%j is text in a spreadsheet, no formula',
    (text) => {
      expect(cellsOf(csvText([[text]]))).toEqual([[`'${text}`]]);
    },
  );

  test('any text comes back as it was, but for the apostrophe before a formula', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: 1, maxLength: 4 })),
        (rows) => {
          const back = cellsOf(csvText(rows));
          const plain = back.map((row, y) =>
            row.map((cell, x) => (cell === `'${rows[y]![x]}` ? cell.slice(1) : cell)),
          );
          expect(plain).toEqual(rows);
          for (const cell of back.flat()) expect(cell).not.toMatch(/^\s*[=+\-@]/);
        },
      ),
      { seed: 7, numRuns: 500 },
    );
  });
});

describe('a class report', () => {
  const drill = drillOf([{ ...sampledDeal({}, 'files'), id: 'files' }]);
  const players = classOf(drill, ['strong', 'casual', 'random']).map((entry) => ({
    ...entry,
    aims: [{ step: 'first-right' as const, sections: ['stairs'] }],
  }));
  const report = classReport({ id: 'files', title: '=SUM(A1)' }, players, houseKernel.card);

  test('reads back from JSON', () => {
    expect(JSON.parse(reportJson(report))).toEqual(report);
  });

  test('has a line for each choice of each step, tiles in words', () => {
    const [head, ...rows] = cellsOf(choicesCsv(report));
    const counts = 'deal,seat,step,kind,choice,players,share';
    const wins = 'wins lost in 100 games,wins lost from,wins lost to,clearly worse';
    expect(head!.join()).toBe(`${counts},${wins}`);
    expect(rows).toHaveLength(report.steps.reduce((sum, { choices }) => sum + choices.length, 0));
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([11]));
    const votes = rows.filter(([, , step]) => step === 'vote').map(([, , , , choice]) => choice);
    expect(votes.every((choice) => choice === 'continue' || choice === 'stop')).toBe(true);
    const passes = rows.filter(([, , step]) => step === 'first-right').map(([, , , , choice]) => choice);
    expect(passes.length).toBeGreaterThan(1);
    expect(passes.every((choice) => choice!.includes(' and ') || choice!.startsWith('a '))).toBe(true);
  });

  test('has a line for each aim and each kind of mistake', () => {
    const stairs = houseKernel.card.sections.find(({ id }) => id === 'stairs')!.name;
    expect(cellsOf(aimsCsv(report))).toEqual([
      ['deal', 'seat', 'step', 'aim', 'players', 'share'],
      ['files', '0', 'first-right', stairs, '3', '1'],
    ]);
    const [, ...mistakes] = cellsOf(mistakesCsv(report));
    expect(mistakes.map(([, label, choices]) => [label, choices])).toEqual(
      report.mistakes.map(({ label, choices }) => [label, String(choices)]),
    );
    expect(mistakes.length).toBeGreaterThan(0);
  });

  test('has its headings even without a player', () => {
    const empty = classReport({ id: 'empty' }, [], houseKernel.card);
    expect(
      [choicesCsv(empty), aimsCsv(empty), mistakesCsv(empty)].map((text) => cellsOf(text).length),
    ).toEqual([1, 1, 1]);
  });
});
