// The report of a class, asked for again while choices are still being looked at, and kept on the teacher's device.
import { useEffect, useState } from 'preact/hooks';
import type { DrillReport } from '../../../shared-engine/index.ts';
import type { Failure } from '../../connection/api.ts';
import type { ClassRow } from '../../storage/history/database.ts';
import { noteClass, readClass } from '../../storage/history/teaching.ts';
import { classDrill } from '../model/class-drill.ts';
import { fetchReport } from '../model/requests.ts';
import { CLASS } from '../model/strings.ts';
import { isLost } from '../model/use-updates.ts';

export interface KnownReport {
  readonly report: DrillReport;
  /** What this device knows of the class; null where it stores nothing. */
  readonly row: ClassRow | null;
}

/** Pause before a report with open ends is asked for again, in milliseconds. */
const AGAIN_MS = 4000;

/** What the page has when the report did not come: what it had, unless that may be seen no more. */
export function withoutReport(
  before: KnownReport | string | null,
  failure: Failure,
): KnownReport | string | null {
  if (before === null || typeof before === 'string' || !isLost(failure)) return before ?? failure.message;
  return failure.code === 'no-such-class' ? CLASS.deleted : failure.message;
}

/** A sentence where there is no report; null while it is on its way. */
export function useReport(code: string): KnownReport | string | null {
  const [known, setKnown] = useState<KnownReport | string | null>(null);
  useEffect(() => {
    let mounted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function ask() {
      const answer = await fetchReport(code);
      if (!mounted) return;
      if (!answer.ok) return setKnown((before) => withoutReport(before, answer));
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
