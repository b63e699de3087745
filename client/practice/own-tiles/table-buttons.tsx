// What can be done with the whole table: a step back, another rack, a drill for a class.
import { useSignal } from '@preact/signals';
import type { LaidExchange } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { rowOfDrill, storeDrill } from '../../storage/history/teaching.ts';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { dropRound } from '../history/keep-rounds.ts';
import { STORAGE_PROBLEMS } from '../history/strings.ts';
import { drillOfTable, lessonOfTable } from './drill-of-table.ts';
import { laidRoundId } from './laid-round.ts';
import { EMPTY_TABLE, type OwnTable } from './own-table.ts';
import { OWN_TILES } from './strings.ts';

/** Digits of the id under which a drill is stored. */
const DRILL_ID_LENGTH = 32;

interface TableButtonsProps {
  readonly app: App;
  readonly storage: TextStorage;
  readonly newSeed: () => string;
  readonly own: OwnTable;
  readonly exchange: LaidExchange;
  readonly onChange: (own: OwnTable) => void;
  /** The last step is taken back. */
  readonly onBack: () => void;
}

export function TableButtons(props: TableButtonsProps) {
  const { app, storage, newSeed, own, exchange, onChange, onBack } = props;
  const { entries } = own;
  const problem = useSignal<StorageProblem | null>(null);
  function back() {
    onBack();
    // An exchange that goes on again is no round of the past.
    if (exchange.stage.phase === 'closed') void dropRound(laidRoundId(exchange), storage);
    onChange(entries.length === 0 ? { ...own, begun: false } : { ...own, entries: entries.slice(0, -1) });
  }
  function saveDrill() {
    const drill = drillOfTable(own, exchange, newSeed());
    saveFile(`${fileName(drill.title)}.json`, 'application/json', JSON.stringify(drill, null, 2));
  }
  /** Among the teacher's drills of this device, and opened there. */
  async function writeLesson() {
    const id = newSeed().slice(0, DRILL_ID_LENGTH);
    const drill = lessonOfTable(own, exchange, newSeed());
    const stored = await storeDrill(
      rowOfDrill({ drill }, { id, group: '', ownCard: app.settings.peek().card }),
    );
    problem.value = stored.ok ? null : stored.problem;
    if (stored.ok) app.go({ kind: 'prepare', drill: id });
  }
  return (
    <>
      <div class="row">
        <button type="button" onClick={back}>
          {OWN_TILES.back}
        </button>
        <button type="button" onClick={() => onChange({ ...EMPTY_TABLE, table: own.table })}>
          {OWN_TILES.again}
        </button>
        <button type="button" onClick={saveDrill}>
          {OWN_TILES.drill}
        </button>
        <button type="button" onClick={() => void writeLesson()}>
          {OWN_TILES.lesson}
        </button>
      </div>
      <p class="aside">
        {OWN_TILES.drillAbout} {OWN_TILES.lessonAbout}
      </p>
      <p class="notice" role="alert">
        {problem.value && STORAGE_PROBLEMS[problem.value]}
      </p>
    </>
  );
}
