// The report on paper and as files: printed, as tables for a spreadsheet, as JSON for another program.
import { useSignal } from '@preact/signals';
import { type CsvStyle, type DrillReport, REPORT_TABLES } from '../../../shared-engine/index.ts';
import { saveReport, saveTable, usualStyle } from './report-files.ts';
import { REPORT, TABLES } from './strings.ts';

interface ReportToolsProps {
  readonly report: DrillReport;
  /** The day of the class, as in `2026-11-26`. */
  readonly date: string;
}

const STYLES = Object.keys(TABLES.styles) as readonly CsvStyle[];

export function ReportTools({ report, date }: ReportToolsProps) {
  const style = useSignal(usualStyle());
  return (
    <div class="not-printed report-tools">
      <div class="row">
        <button type="button" class="primary" onClick={() => window.print()}>
          {REPORT.print}
        </button>
        <button type="button" onClick={() => saveReport(report, date)}>
          {REPORT.json}
        </button>
      </div>
      <fieldset class="row" aria-label={TABLES.title}>
        <label>
          {TABLES.style}{' '}
          <select
            value={style.value}
            onChange={({ currentTarget }) => {
              style.value = STYLES.find((one) => one === currentTarget.value) ?? style.value;
            }}
          >
            {STYLES.map((one) => (
              <option key={one} value={one}>
                {TABLES.styles[one]}
              </option>
            ))}
          </select>
        </label>
        {REPORT_TABLES.filter((table) => table !== 'players' || report.players !== null).map((table) => (
          <button
            key={table}
            type="button"
            onClick={() => saveTable(table, report, { date, style: style.value })}
          >
            {TABLES.save[table]}
          </button>
        ))}
      </fieldset>
    </div>
  );
}
