// The report of a class as files for other programs.
import {
  type CsvStyle,
  type DrillReport,
  type ReportTable,
  reportTable,
} from '../../../shared-engine/index.ts';
import { fileName, saveFile } from '../../ui/save-file.ts';

/** So that spreadsheets read names as they are written. */
const BYTE_ORDER_MARK = '\uFEFF';

interface FileOptions {
  /** The day of the class, as in `2026-11-26`. */
  readonly date: string;
  readonly style: CsvStyle;
}

export function saveTable(table: ReportTable, report: DrillReport, options: FileOptions): void {
  const name = `${fileName(report.title)}-${options.date}-${table}.csv`;
  saveFile(name, 'text/csv', `${BYTE_ORDER_MARK}${reportTable(table, report, options)}`);
}

export function saveReport(report: DrillReport, date: string): void {
  const name = `${fileName(report.title)}-${date}-report.json`;
  saveFile(name, 'application/json', reportJson(report, date));
}

/** Described in shared-engine/drill/report/REPORT.md. */
export function reportJson(report: DrillReport, date: string): string {
  return `${JSON.stringify({ format: 'quadrille-report/1', date, ...report }, null, 2)}\n`;
}

/** What this device writes between whole and part of a number decides what its spreadsheets expect. */
export function usualStyle(): CsvStyle {
  return (1.5).toLocaleString().includes(',') ? 'semicolon' : 'comma';
}
