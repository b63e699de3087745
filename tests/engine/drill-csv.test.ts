// The report as tables: CSV by RFC 4180 that no spreadsheet runs as a formula, read back by csv-parse; what to teach next.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import { plainRack } from '../../shared-engine/drill/prepare.ts';
import { type ClassReport, classReport } from '../../shared-engine/drill/report/class-report.ts';
import { type CsvStyle, csvText } from '../../shared-engine/drill/report/csv.ts';
import {
  REPORT_TABLES,
  type ReportTable,
  reportTable,
} from '../../shared-engine/drill/report/report-files.ts';
import { drillOfPoint, teachNext } from '../../shared-engine/drill/report/teach-next.ts';
import { classOf } from '../kit/classes.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const STYLES: readonly CsvStyle[] = ['comma', 'semicolon'];
const DELIMITER = { comma: ',', semicolon: ';' } as const;

function cellsOf(text: string, style: CsvStyle = 'comma'): string[][] {
  return parse(text, { delimiter: DELIMITER[style], record_delimiter: '\r\n' });
}

describe('CSV (RFC 4180, section 2)', () => {
  test('2.1 and 2.4: lines end in CR LF, cells stand between commas', () => {
    const rows = [
      ['a', 'b'],
      [1, null],
      [0.5, -2],
    ];
    expect(csvText(rows)).toBe('a,b\r\n1,\r\n0.5,-2\r\n');
    expect(csvText(rows, 'semicolon')).toBe('a;b\r\n1;\r\n0,5;-2\r\n');
  });

  test('2.6 and 2.7: commas, quotes and line breaks stand in quotes, quotes doubled', () => {
    expect(csvText([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvText([['aaa', 'b"bb', 'c,c;c']])).toBe('aaa,"b""bb","c,c;c"\r\n');
  });

  test.each(['=1+1', '+1', '-1', '@sum', '\tx', '\rx', ' =1', '＝1'])(
    '%j is text in a spreadsheet, no formula',
    (text) => {
      expect(cellsOf(csvText([[text]]))).toEqual([[`'${text}`]]);
    },
  );

  test('a formula hidden behind the separator of another locale is text there too', () => {
    const hidden = 'Tuesday;=1+1,"=2+2\t@sum';
    for (const style of STYLES) {
      const text = csvText([['first', hidden]], style);
      expect(cellsOf(text, style)).toEqual([['first', "Tuesday;'=1+1,'\"=2+2\t'@sum"]]);
      for (const line of text.split(/[,;\t\r\n]/)) expect(line).not.toMatch(/^[\s"]*[=+\-@]/);
    }
  });

  test('any text comes back as it was, but for apostrophes before a formula, in both styles', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(fc.constantFrom(...'=+-@,;"\' \t\r\nab'), { maxLength: 8 }).map((letters) => letters.join('')),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 2 }), (rows) => {
        for (const style of STYLES) {
          const text = csvText(rows, style);
          const back: string[][] = parse(text, {
            delimiter: DELIMITER[style],
            record_delimiter: '\r\n',
            relax_column_count: true,
          });
          const plain = (cells: readonly string[][]) =>
            cells.map((row) => row.map((one) => one.replaceAll("'", '')));
          expect(plain(back)).toEqual(plain(rows.map((row) => [...row])));
          const pieces = back.flat().flatMap((one) => one.split(/[,;\t\r\n]/));
          expect(pieces.filter((piece) => /^[\s"]*[=+\-@＝＋－＠]/.test(piece))).toEqual([]);
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe('a class report as tables', () => {
  const drill = drillOf([
    { ...sampledDeal({}, 'files'), id: 'files', title: '=SUM(A1); one' },
    { ...sampledDeal({}, 'more'), id: 'more' },
  ]);
  const players = classOf(drill, ['strong', 'casual', 'random']).map((entry) => ({
    ...entry,
    aims: [{ step: 'first-right' as const, sections: ['stairs'] }],
  }));
  const deal = classReport(drill.deals[0]!, players, houseKernel.card);
  const report = {
    title: 'Evening',
    deals: [deal, classReport(drill.deals[1]!, [], houseKernel.card)],
    players: [
      { name: '=1+1', deals: [{ deal: 'files', toGoStart: 7, toGoEnd: 5, winsLost: 0.5, stoodIn: 1 }] },
    ],
  };
  const table = (name: ReportTable, style: CsvStyle = 'comma') =>
    cellsOf(reportTable(name, report, { date: '2026-11-26', style }), style);

  test('has in each row the class, the day and the deal, and the same in both styles', () => {
    for (const name of REPORT_TABLES) {
      const [head, ...rows] = table(name);
      expect(head!.slice(0, 4)).toEqual(['class', 'date', 'deal number', 'deal title']);
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows)
        expect(row.slice(0, 4)).toEqual(['Evening', '2026-11-26', '1', "'=SUM(A1); one"]);
      const other = table(name, 'semicolon').map((row) =>
        row.map((cell) => cell.replace(/^(-?\d+),(\d+)$/, '$1.$2')),
      );
      expect(other).toEqual([head, ...rows]);
    }
  });

  test('has a line for each choice of each step, with rack and best, tiles in words', () => {
    const [head, ...rows] = table('choices');
    expect(rows).toHaveLength(deal.steps.reduce((sum, { choices }) => sum + choices.length, 0));
    const at = (name: string) => head!.indexOf(name);
    const passes = rows.filter((row) => row[at('step')] === 'first right');
    expect(passes.length).toBeGreaterThan(1);
    for (const row of passes) {
      expect(row[at('choice')]).toMatch(/ and |^a /);
      expect(row[at('best choice')]).toMatch(/ and |^a /);
      expect(row[at('rack')]!.split(', ').length).toBeGreaterThan(5);
      expect(row[at('players who chose')]).toBe('3');
    }
    const votes = rows.filter((row) => row[at('kind of choice')] === 'vote').map((row) => row[at('choice')]);
    expect(votes.every((choice) => choice === 'continue' || choice === 'stop')).toBe(true);
  });

  test('has a line for each aim, each kind of mistake and each player', () => {
    const stairs = houseKernel.card.sections.find(({ id }) => id === 'stairs')!.name;
    expect(table('aims')[1]!.slice(4)).toEqual(['1', 'first right', stairs, '3', '100']);
    expect(
      table('mistakes')
        .slice(1)
        .map((row) => row.slice(4, 6)),
    ).toEqual(deal.mistakes.map(({ label, choices }) => [label, String(choices)]));
    expect(table('players')[1]!.slice(4)).toEqual(["'=1+1", '7', '5', '0.5', '1']);
  });

  test('names at most three kinds to teach next, with racks that the report shows, and makes a drill of each', () => {
    const again: ClassReport = { ...deal, deal: 'again' };
    const points = teachNext([deal, again]);
    const inOrder = deal.mistakes.map(({ category }) => category).slice(0, 3);
    expect(points.map(({ category }) => category)).toEqual(inOrder);
    expect(points.length).toBeGreaterThan(0);
    let seeds = 0;
    const seed = () => seedNamed(`point ${++seeds}`);
    for (const point of points) {
      expect(point.choices).toBe(
        2 * deal.mistakes.find(({ category }) => category === point.category)!.choices,
      );
      for (const { rack, chosen, better } of point.examples) {
        const step = deal.steps.find((one) => one.rack === rack)!;
        const choice = step.choices.find((one) => one.chosen === chosen)!;
        expect(choice.mistakes).toContain(point.category);
        expect(better).toEqual(step.best!.chosen);
      }
      const made = drillOfPoint(point, drill, seed)!;
      expect(parseDrill(made, houseKernel).ok).toBe(true);
      const racks = new Set(point.examples.map(({ rack }) => rack.join()));
      if (racks.size > 0) {
        expect(new Set(made.deals.map((one) => plainRack(made, one)!.join()))).toEqual(racks);
      }
      expect(drillOfPoint({ ...point, examples: [] }, null, seed)).toBeNull();
      expect(drillOfPoint({ ...point, examples: [] }, drill, seed)!.deals).toMatchObject([
        { title: '=SUM(A1); one' },
      ]);
    }
    expect(points.some(({ examples }) => examples.length > 0)).toBe(true);
  });
});
