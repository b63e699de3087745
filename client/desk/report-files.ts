// The report of a class as files for other programs.
import { aimsCsv, choicesCsv, csvText, type DrillReport, themesCsv } from '../../shared-engine/index.ts';

export function reportText(report: DrillReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** One table after the other, an empty line between two: choices, aims and themes of each deal, then the pupils. */
export function reportCsv({ deals, pupils }: DrillReport): string {
  const tables = deals.flatMap((deal) => [choicesCsv(deal), aimsCsv(deal), themesCsv(deal)]);
  const rows = (pupils ?? []).flatMap(({ name, deals: played }) =>
    played.map(({ deal, toGoStart, toGoEnd, loss }) => [name, deal, toGoStart, toGoEnd, loss]),
  );
  const head = ['pupil', 'deal', 'to go as dealt', 'to go at the close', 'tiles lost'];
  return [...tables, ...(pupils ? [csvText([head, ...rows])] : [])].join('\r\n');
}
