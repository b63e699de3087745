// The report of a class as tables: one file each for choices, aims, kinds of mistake and players, one row a fact.
import { type MeasuredValue, thousandth, tileList } from '../../analysis/index.ts';
import type { Face, Step } from '../../rules/index.ts';
import type { ClassReport } from './class-report.ts';
import { type Cell, type CsvStyle, csvText } from './csv.ts';
import type { StepSpread } from './spread.ts';

/** A report as it is sent, as far as tables show it. */
export interface TabledReport {
  readonly title: string;
  readonly deals: readonly ClassReport[];
  readonly players:
    | readonly {
        readonly name: string;
        readonly deals: readonly {
          readonly deal: string;
          readonly toGoStart: number | null;
          readonly toGoEnd: number | null;
          readonly winsLost: number | null;
          readonly stoodIn: number;
        }[];
      }[]
    | null;
}

export const REPORT_TABLES = ['choices', 'aims', 'mistakes', 'players'] as const;
export type ReportTable = (typeof REPORT_TABLES)[number];

/** Each row says of which class, day and deal it is, so that tables of several classes can be put together. */
const HEAD = ['class', 'date', 'deal number', 'deal title'] as const;
const AT = ['seat', 'step'] as const;

interface TableOptions {
  /** The day of the class, as in `2026-11-26`. */
  readonly date: string;
  readonly style: CsvStyle;
}

export function reportTable(table: ReportTable, report: TabledReport, { date, style }: TableOptions): string {
  const ofDeal = (nth: number): Cell[] => [report.title, date, nth + 1, report.deals[nth]?.title ?? null];
  switch (table) {
    case 'choices':
      return csvText([CHOICES, ...rowsOf(report.deals, ofDeal, choiceRows)], style);
    case 'aims':
      return csvText([AIMS, ...rowsOf(report.deals, ofDeal, aimRows)], style);
    case 'mistakes':
      return csvText([MISTAKES, ...rowsOf(report.deals, ofDeal, mistakeRows)], style);
    case 'players':
      return csvText([PLAYERS, ...playerRows(report, ofDeal)], style);
  }
}

function rowsOf(
  deals: readonly ClassReport[],
  ofDeal: (nth: number) => Cell[],
  rows: (deal: ClassReport) => readonly Cell[][],
): readonly Cell[][] {
  return deals.flatMap((deal, nth) => rows(deal).map((row) => [...ofDeal(nth), ...row]));
}

const CHOICES = [
  ...HEAD,
  ...AT,
  'kind of choice',
  'rack',
  'choice',
  'best choice',
  'players who chose so',
  'players who chose',
  'share of players (%)',
  'wins lost in 100 games',
  'wins lost in 100 games, at least',
  'wins lost in 100 games, at most',
  'players with something clearly better',
];

/** One row for each choice of each step, and one that makes the players add up where some choices are not told. */
function choiceRows({ steps }: ClassReport): readonly Cell[][] {
  return steps.flatMap(({ seat, step, kind, rack, best, players, choices, hidden = 0 }) => {
    const at: Cell[] = [seat + 1, stepName(step), kind, rack && tileList(rack)];
    const bestText = best && choiceText(kind, best.chosen);
    const made = choices.map((choice): Cell[] => [
      ...at,
      choiceText(kind, choice.chosen),
      bestText,
      choice.count,
      players,
      percent(choice.share),
      ...ends(choice.winsLost),
      choice.costly,
    ]);
    const told = [percent(players === 0 ? 0 : hidden / players), null, null, null, null];
    return hidden === 0 ? made : [...made, [...at, 'not told', bestText, hidden, players, ...told]];
  });
}

const AIMS = [...HEAD, ...AT, 'section aimed at', 'players', 'share of players who named an aim (%)'];

/** A step with a blind number has two spreads with the same aims. */
function aimRows({ steps, sections }: ClassReport): readonly Cell[][] {
  return steps
    .filter(({ kind }) => kind !== 'blind')
    .flatMap(({ seat, step, aims }) =>
      aims.map(({ section, count, share }): Cell[] => [
        seat + 1,
        stepName(step),
        sections[section] ?? section,
        count,
        percent(share),
      ]),
    );
}

const MISTAKES = [...HEAD, 'kind of mistake', 'choices', 'players', 'wins lost in 100 games, in total'];

function mistakeRows({ mistakes }: ClassReport): readonly Cell[][] {
  return mistakes.map(({ label, choices, players, totalWinsLost }): Cell[] => [
    label,
    choices,
    players,
    totalWinsLost,
  ]);
}

const PLAYERS = [
  ...HEAD,
  'player',
  'tiles to go as dealt',
  'tiles to go at the end',
  'wins lost in 100 games',
  'choices a bot made',
];

function playerRows({ deals, players }: TabledReport, ofDeal: (nth: number) => Cell[]): readonly Cell[][] {
  return (players ?? []).flatMap(({ name, deals: played }) =>
    played.map(({ deal, toGoStart, toGoEnd, winsLost, stoodIn }): Cell[] => [
      ...ofDeal(deals.findIndex((one) => one.deal === deal)),
      name,
      toGoStart,
      toGoEnd,
      winsLost,
      stoodIn,
    ]),
  );
}

/** `first right`. */
function stepName(step: Step): string {
  return step.replaceAll('-', ' ');
}

function ends(lost: MeasuredValue | null): Cell[] {
  if (lost === null) return [null, null, null];
  const { value, halfWidth } = lost;
  return [value, thousandth(value - halfWidth), thousandth(value + halfWidth)];
}

function percent(share: number): number {
  return Math.round(share * 1_000) / 10;
}

function choiceText(kind: StepSpread['kind'], chosen: readonly Face[] | number): string {
  if (typeof chosen !== 'number') return chosen.length === 0 ? 'three tiles blind' : tileList(chosen);
  switch (kind) {
    case 'vote':
      return chosen === 1 ? 'continue' : 'stop';
    case 'ask':
      return `ask for ${chosen}`;
    default:
      return `${chosen} blind`;
  }
}
