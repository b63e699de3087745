// The report of a class, asked for again while choices are still being looked at, and kept on the teacher's device.
import { useEffect, useState } from 'preact/hooks';
import type { DrillReport } from '../../../shared-engine/index.ts';
import type { ClassRow } from '../../storage/history/database.ts';
import { noteClass, readClass } from '../../storage/history/teaching.ts';
import { classDrill } from '../model/class-drill.ts';
import { fetchReport } from '../model/requests.ts';

export interface KnownReport {
  readonly report: DrillReport;
  /** What this device knows of the class; null where it stores nothing. */
  readonly row: ClassRow | null;
}

/** Pause before a report with open ends is asked for again, in milliseconds. */
const AGAIN_MS = 4000;

/** A sentence where there is no report; null while it is on its way. */
export function useReport(code: string): KnownReport | string | null {
  const [known, setKnown] = useState<KnownReport | string | null>(null);
  useEffect(() => {
    let mounted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function ask() {
      const answer = await fetchReport(code);
      if (!mounted) return;
      if (!answer.ok) return setKnown((before) => before ?? answer.message);
      const report = answer.value;
      await noteClass(code, { title: report.title, report: JSON.stringify(report) }, Date.now());
      // A second desk has its drill from the class: what is taught next is made from it.
      await classDrill(code);
      const read = await readClass(code);
      if (!mounted) return;
      setKnown({ report, row: read.ok ? read.value : null });
      if (report.deals.some(({ pending }) => pending > 0)) timer = setTimeout(() => void ask(), AGAIN_MS);
    }
    void ask();
    return () => {
      mounted = false;
      clearTimeout(timer);
    };
  }, [code]);
  return known;
}
