// An anonymous class report: a choice of one player alone is left out where it would show who made it.
import { describe, expect, test } from 'vitest';
import { anonymized } from '../../shared-engine/drill/report/anonymity.ts';
import { type ClassReport, classReport } from '../../shared-engine/drill/report/class-report.ts';
import { choicesCsv } from '../../shared-engine/drill/report/report-files.ts';
import type { StyleName } from '../../shared-engine/policy/styles.ts';
import { type DrillReport, drillReportSchema } from '../../shared-engine/protocol/class-report.ts';
import { classOf } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('discretion') })]);
const reportOf = (styles: readonly StyleName[], allHaveChosen: boolean | null): ClassReport =>
  classReport(
    drill.deals[0]!,
    classOf(drill, styles),
    houseKernel.card,
    allHaveChosen === null ? null : () => allHaveChosen,
  );

const single = ({ steps }: ClassReport) =>
  steps.flatMap(({ choices }) => choices.filter(({ count }) => count === 1));
/** Five players whose styles choose alike, and one whose style does not. */
const STYLES: readonly StyleName[] = ['strong', 'strong', 'strong', 'typical', 'random', 'random'];

describe('an anonymous report while somebody has still to choose', () => {
  const open = reportOf(STYLES, null);
  const kept = reportOf(STYLES, false);

  test('shows how many have chosen and no choice, because a count that grows shows who chose just then', () => {
    expect(open.steps.flatMap(({ choices }) => choices).length).toBeGreaterThan(0);
    for (const step of kept.steps) {
      expect([step.choices, step.aims, step.hidden]).toEqual([[], [], step.players]);
      expect([step.loss, step.winsLost, step.costly]).toEqual([null, null, null]);
    }
  });
});

test('an anonymous report shows choices of single players only if there are at least two of them', () => {
  const open = reportOf(STYLES, null);
  const kept = reportOf(STYLES, true);
  for (const [nth, step] of kept.steps.entries()) {
    const alone = open.steps[nth]!.choices.filter(({ count }) => count === 1).length;
    expect(step.choices.filter(({ count }) => count === 1).length).toBe(alone === 1 ? 0 : alone);
    expect(step.choices.filter(({ count }) => count > 1)).toEqual(
      open.steps[nth]!.choices.filter(({ count }) => count > 1),
    );
    expect(step.hidden).toBe(alone === 1 ? 1 : undefined);
  }
  expect(single(kept).length).toBeGreaterThan(0);
  expect(anonymized([3, 1, 2], (players) => players, true)).toEqual([3, 2]);
  expect(anonymized([3, 1, 1], (players) => players, true)).toEqual([3, 1, 1]);
  expect(anonymized([3, 1, 1], (players) => players, false)).toEqual([]);
});

test('an anonymous report of a class of one says only that one player played', () => {
  const kept = reportOf(['strong'], true);
  expect([kept.players, kept.reviewed, kept.toGoStart, kept.toGoEnd, kept.mistakes]).toEqual([
    1,
    1,
    null,
    null,
    [],
  ]);
  for (const step of kept.steps) {
    expect([step.choices, step.aims, step.rack, step.loss, step.hidden]).toEqual([[], [], null, null, 1]);
  }
});

test('the CSV table counts the hidden choices, so that the players add up', () => {
  const kept = reportOf(STYLES, false);
  const [head, ...rows] = choicesCsv(kept)
    .trim()
    .split('\r\n')
    // Lists of tiles stand in quotes, with commas of their own.
    .map((row) => row.replace(/"[^"]*"/g, 'tiles').split(','));
  const players = head!.indexOf('players');
  expect(rows.every((row) => row.length === head!.length)).toBe(true);
  for (const { step, kind, players: all } of kept.steps) {
    const mine = rows.filter((row) => row[2] === step && row[3] === kind);
    expect(mine.reduce((sum, row) => sum + Number(row[players]), 0)).toBe(all);
  }
});

test('an anonymous report passes its schema unchanged', () => {
  const report: DrillReport = { title: 'Discreet', deals: [reportOf(STYLES, false)], players: null };
  expect(drillReportSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report);
});
