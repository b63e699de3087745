// The classes of one group side by side: kinds of mistake and players over the weeks, from the reports that are kept here.
import { type DrillReport, drillReportSchema } from '../../../shared-engine/index.ts';
import type { ClassRow } from '../../storage/history/database.ts';

export interface ClassFigures {
  readonly code: string;
  readonly title: string;
  readonly openedAt: number;
  readonly players: number;
  /** Choices whose cost is known, and for how many of them something was clearly better. */
  readonly choices: number;
  readonly costly: number;
  readonly report: DrillReport;
}

/** Null where no report is kept, or one that this page cannot read. */
export function figuresOf({ code, title, openedAt, report: text }: ClassRow): ClassFigures | null {
  const read = text === null ? null : drillReportSchema.safeParse(parsed(text));
  if (!read?.success) return null;
  const report = read.data;
  const known = report.deals
    .flatMap(({ steps }) => steps)
    .flatMap(({ choices }) => choices)
    .filter(({ costly }) => costly !== null);
  return {
    code,
    title,
    openedAt,
    players: Math.max(0, ...report.deals.map(({ players }) => players)),
    choices: known.reduce((sum, { count }) => sum + count, 0),
    costly: known.reduce((sum, { costly }) => sum + (costly ?? 0), 0),
    report,
  };
}

/** One row of a table: what it is about, and a figure for each class, null where that class has none. */
export interface OverWeeks {
  readonly name: string;
  readonly figures: readonly (number | null)[];
}

/** Of 100 choices, how many were this kind of mistake; what cost most over all classes comes first. */
export function themesOver(classes: readonly ClassFigures[]): readonly OverWeeks[] {
  const totals = new Map<string, number>();
  for (const { report } of classes) {
    for (const { label, totalWinsLost } of report.deals.flatMap(({ mistakes }) => mistakes)) {
      totals.set(label, (totals.get(label) ?? 0) + totalWinsLost);
    }
  }
  const labels = [...totals].sort(([, a], [, b]) => b - a).map(([label]) => label);
  return labels.map((name) => ({
    name,
    figures: classes.map(({ report, choices }) => {
      const found = report.deals.flatMap(({ mistakes }) => mistakes.filter(({ label }) => label === name));
      const made = found.reduce((sum, mistake) => sum + mistake.choices, 0);
      return choices === 0 ? null : (100 * made) / choices;
    }),
  }));
}

/** Wins lost a deal in 100 games, of each player whom a class named; whoever was there most often comes first. */
export function playersOver(classes: readonly ClassFigures[]): readonly OverWeeks[] {
  const names = new Set(classes.flatMap(({ report }) => (report.players ?? []).map(({ name }) => name)));
  const been = ({ figures }: OverWeeks) => figures.filter((figure) => figure !== null).length;
  return [...names]
    .map((name) => ({ name, figures: classes.map(({ report }) => lostBy(name, report)) }))
    .sort((a, b) => been(b) - been(a) || (a.name < b.name ? -1 : 1));
}

/** Two of one name in a class cannot be told apart, and are left out there. */
function lostBy(name: string, { players }: DrillReport): number | null {
  const [one, ...others] = (players ?? []).filter((player) => player.name === name);
  const lost = (one?.deals ?? []).flatMap(({ winsLost }) => winsLost ?? []);
  if (others.length > 0 || lost.length === 0) return null;
  return lost.reduce((sum, wins) => sum + wins, 0) / lost.length;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
