// A class report in which no player may be told from the others: what one player alone chose is left out where it would tell.
import { describe, expect, test } from 'vitest';
import {
  type ClassReport,
  choicesCsv,
  classReport,
  type DrillReport,
  anonymized,
  drillReportSchema,
  type StyleName,
} from '../../shared-engine/index.ts';
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
/** Five who choose alike by nature and one who does not. */
const STYLES: readonly StyleName[] = ['strong', 'strong', 'strong', 'typical', 'random', 'random'];

describe('while somebody has still to choose', () => {
  const open = reportOf(STYLES, null);
  const kept = reportOf(STYLES, false);

  test('no choice is told, for a count that grows tells who made it; how many have chosen is', () => {
    expect(open.steps.flatMap(({ choices }) => choices).length).toBeGreaterThan(0);
    for (const step of kept.steps) {
      expect([step.choices, step.aims, step.hidden]).toEqual([[], [], step.players]);
      expect([step.loss, step.winsLost, step.costly]).toEqual([null, null, null]);
    }
  });
});

test('when all have chosen, single choices stand where there are several of them, and never one by itself', () => {
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

test('of a class of one nothing is told but that one player played', () => {
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

test('the table for a spreadsheet counts what is left out, so that the players add up', () => {
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

test('what is left out passes the border as it is told', () => {
  const report: DrillReport = { title: 'Discreet', deals: [reportOf(STYLES, false)], players: null };
  expect(drillReportSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report);
});
