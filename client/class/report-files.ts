// The report of a class as files for other programs.
import { aimsCsv, choicesCsv, csvText, type DrillReport, mistakesCsv } from '../../shared-engine/index.ts';

export function reportText(report: DrillReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** One table after the other, an empty line between two: choices, aims and themes of each deal, then the players. */
export function reportCsv({ deals, players }: DrillReport): string {
  const tables = deals.flatMap((deal) => [choicesCsv(deal), aimsCsv(deal), mistakesCsv(deal)]);
  const rows = (players ?? []).flatMap(({ name, deals: played }) =>
    played.map(({ deal, toGoStart, toGoEnd, loss }) => [name, deal, toGoStart, toGoEnd, loss]),
  );
  const head = ['player', 'deal', 'to go as dealt', 'to go at the close', 'tiles lost'];
  return [...tables, ...(players ? [csvText([head, ...rows])] : [])].join('\r\n');
}
