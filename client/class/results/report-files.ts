// The report of a class as files for other programs.
import { aimsCsv, choicesCsv, csvText, type DrillReport, mistakesCsv } from '../../../shared-engine/index.ts';

export function reportJson(report: DrillReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** Tables with an empty line between two: the choices, aims and mistakes of each deal, then the players. */
export function reportCsv({ deals, players }: DrillReport): string {
  const tables = deals.flatMap((deal) => [choicesCsv(deal), aimsCsv(deal), mistakesCsv(deal)]);
  const rows = (players ?? []).flatMap(({ name, deals: played }) =>
    played.map(({ deal, toGoStart, toGoEnd, winsLost }) => [name, deal, toGoStart, toGoEnd, winsLost]),
  );
  const head = ['player', 'deal', 'tiles to go as dealt', 'tiles to go at the end', 'wins lost in 100 games'];
  return [...tables, ...(players ? [csvText([head, ...rows])] : [])].join('\r\n');
}
