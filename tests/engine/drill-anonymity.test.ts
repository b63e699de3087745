// What is told of a frozen step in an anonymous class: counts of three players or more, at least two of them, or nothing.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type FrozenSpread,
  frozenSpreads,
  mergedCells,
  spreadOfFrozen,
  withheldSpread,
} from '../../shared-engine/drill/report/anonymity.ts';
import { anonymousReport } from '../../shared-engine/drill/report/class-report.ts';
import type { ClassEntry } from '../../shared-engine/drill/report/entry.ts';
import { reportTable } from '../../shared-engine/drill/report/report-files.ts';
import type { StyleName } from '../../shared-engine/policy/styles.ts';
import {
  type DrillReport,
  drillReportSchema,
  frozenSpreadSchema,
  spreadSchema,
} from '../../shared-engine/protocol/class-report.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { classOf } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('discretion') })]);
const { card } = houseKernel;
const sections = card.sections.map(({ id }) => id);
const STYLES: readonly StyleName[] = [
  ...Array.from({ length: 5 }, (): StyleName => 'strong'),
  ...Array.from({ length: 4 }, (): StyleName => 'casual'),
  'random',
];
const entries = classOf(drill, STYLES).map((entry, n): ClassEntry => {
  const aims = n < 4 ? [{ step: 'first-right' as const, sections: ['stairs'] }] : [];
  return { ...entry, aims };
});
const frozenAt = (step: (typeof STEPS)[number], players = entries): FrozenSpread[] =>
  frozenSpreads(
    { seat: 0, step, rack: step === 'first-right' ? entries[0]!.record.start : null },
    players,
    sections,
    ({ record }, { kind, step: when }) => `${kind} ${when} ${JSON.stringify(record.steps[0])}`,
  );

describe('the merged counts of a step', () => {
  const merged = (...counts: number[]) => {
    const told = mergedCells(counts.map((count) => ({ count })));
    return told && [told.cells.map(({ count }) => count), told.other];
  };

  test.each<[number[], [number[], number] | null]>([
    [
      [3, 3],
      [[3, 3], 0],
    ],
    [
      [4, 1, 1, 1],
      [[4], 3],
    ],
    [
      [5, 3, 1],
      [[5], 4],
    ],
    [
      [5, 4, 3, 2],
      [[5, 4], 5],
    ],
    [[6], null],
    [[5, 1], null],
    [[4, 2], null],
    [[1, 1, 1, 1, 1, 1], null],
    [[], null],
  ])('AN4 of %j tell %j', (counts, told) => {
    expect(merged(...counts)).toEqual(told);
  });

  test('AN4 hold three players or more each and add up to all, or nothing is told', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 9 }), (counts) => {
        const told = mergedCells(counts.map((count) => ({ count })));
        if (told === null) return;
        const cells = [...told.cells.map(({ count }) => count), ...(told.other > 0 ? [told.other] : [])];
        expect(cells.length).toBeGreaterThanOrEqual(2);
        expect(Math.min(...cells)).toBeGreaterThanOrEqual(3);
        expect(cells.reduce((sum, count) => sum + count, 0)).toBe(counts.reduce((sum, n) => sum + n, 0));
      }),
    );
  });
});

test('AN1 the order of the players changes no byte of what is frozen', () => {
  const turned = [...entries.slice(4), ...entries.slice(0, 4)].reverse();
  for (const step of STEPS)
    expect(JSON.stringify(frozenAt(step, turned))).toBe(JSON.stringify(frozenAt(step)));
  expect(frozenAt('first-right')).toHaveLength(1);
});

test('AN4 aims are counted by the same rule, with those who named none as one answer', () => {
  expect(frozenAt('first-right')[0]!.aims).toEqual([{ section: 'stairs', count: 4, share: 1 }]);
  const one = entries.map((entry, n) => (n === 0 ? entry : { ...entry, aims: [] }));
  expect(frozenAt('first-right', one)[0]!.aims).toEqual([]);
});

test('AN4 no number passed blind can be made smaller than three by subtracting the passes that are told', () => {
  const random = stream('subtraction', 'players');
  for (let group = 0; group < 100; group++) {
    const players = Array.from({ length: 6 + random.below(7) }, () => entries[random.below(entries.length)]!);
    for (const step of ['first-left', 'second-right'] as const) {
      const told = frozenAt(step, players);
      const blind = told.find(({ kind }) => kind === 'blind');
      const passes = told.find(({ kind }) => kind === 'pass')?.cells ?? [];
      for (const { chosen, count } of blind?.cells ?? []) {
        const same = passes.filter((cell) => Array.isArray(cell.chosen) && 3 - cell.chosen.length === chosen);
        const rest = same.reduce((left, cell) => left - cell.count, count);
        expect(rest === 0 || rest >= 3).toBe(true);
      }
    }
  }
});

/** Analyses of the choices of everybody, by the ids that are given above. */
const analyses = Object.fromEntries(
  entries.flatMap(({ record, analyses: made }) =>
    made!.map((one) => [`${one.kind} ${one.step} ${JSON.stringify(record.steps[0])}`, one] as const),
  ),
);

test('AN5 a choice has a cost where all held one rack, and elsewhere none; the mistakes follow from the counts', () => {
  const first = frozenAt('first-right');
  expect(first[0]!.cells.every(({ decisionId }) => decisionId !== null)).toBe(true);
  const later = STEPS.slice(1).flatMap((step) => frozenAt(step));
  expect(later.flatMap(({ cells }) => cells).every(({ decisionId }) => decisionId === null)).toBe(true);
  const told = { players: 10, frozen: first, analyses };
  const { mistakes, toGoStart, toGoEnd, steps } = anonymousReport(drill.deals[0]!, told, card);
  expect([toGoStart, toGoEnd, steps[0]!.pending]).toEqual([null, null, 0]);
  expect(steps[0]!.choices.every(({ winsLost }) => winsLost !== null)).toBe(true);
  expect(steps[0]!.best).not.toBeNull();
  for (const { category, choices } of mistakes) {
    const cells = first[0]!.cells.filter((cell) => analyses[cell.decisionId!]!.mistakes.includes(category));
    expect(choices).toBe(cells.reduce((sum, { count }) => sum + count, 0));
  }
});

test('AN5 no cost of a step is told before each choice told there has been analyzed', () => {
  const first = frozenAt('first-right');
  const report = anonymousReport(drill.deals[0]!, { players: 10, frozen: first, analyses: {} }, card);
  const waiting = first[0]!.cells.reduce((sum, { count }) => sum + count, 0);
  expect(report).toMatchObject({ pending: waiting, mistakes: [] });
  expect(report.steps[0]!.choices.every(({ winsLost, costly }) => (winsLost ?? costly) === null)).toBe(true);
});

test('AN2 of five players nothing is frozen, however they chose', () => {
  for (let from = 0; from < 6; from++) {
    for (const step of STEPS) expect(frozenAt(step, entries.slice(from, from + 5))).toEqual([]);
  }
});

test('the CSV table counts the players who chose something else, so that the players add up', () => {
  const report = anonymousReport(
    drill.deals[0]!,
    { players: 10, frozen: frozenAt('first-right'), analyses },
    card,
  );
  const tabled = { title: 'Evening', deals: [report], players: null };
  const [head, ...rows] = reportTable('choices', tabled, { date: '2026-11-26', style: 'comma' })
    .trim()
    .split('\r\n')
    // Lists of tiles stand in quotes, with commas of their own.
    .map((row) => row.replace(/"[^"]*"/g, 'tiles').split(','));
  const players = head!.indexOf('players who chose so');
  expect(rows.every((row) => row.length === head!.length)).toBe(true);
  expect(rows.reduce((sum, row) => sum + Number(row[players]), 0)).toBe(report.steps[0]!.players);
});

test('what is frozen, shown and withheld passes its schema unchanged', () => {
  const [frozen] = frozenAt('first-right');
  const copy = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
  expect(frozenSpreadSchema.parse(copy(frozen))).toEqual(frozen);
  expect(spreadSchema.parse(copy(spreadOfFrozen(frozen!, analyses)))).toEqual(
    spreadOfFrozen(frozen!, analyses),
  );
  const nothing = withheldSpread({ seat: 0, kind: 'pass', step: 'first-right' }, null);
  expect(spreadSchema.parse(copy(nothing))).toEqual(nothing);
  const deals = [anonymousReport(drill.deals[0]!, { players: 10, frozen: [frozen!], analyses }, card)];
  const report: DrillReport = { title: 'Discreet', ended: false, anonymous: true, deals, players: null };
  expect(drillReportSchema.parse(copy(report))).toEqual(report);
});
