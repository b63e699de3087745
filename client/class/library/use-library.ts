// The drills and classes of this device with what can be done to each; whatever is removed can be put back.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { readDrillFile } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import type { ClassRow, DrillRow, StorageProblem, Stored } from '../../storage/history/database.ts';
import {
  listClasses,
  listDrills,
  removeClass,
  removeDrill,
  rowOfDrill,
  storeClass,
  storeDrill,
} from '../../storage/history/teaching.ts';
import { newDrillId, startClass, storedDrill } from '../model/library.ts';
import { kernelOf } from '../prepare/deal-tasks.ts';
import { PREPARE } from '../prepare/strings.ts';
import { LIBRARY, STORAGE_PROBLEMS } from './strings.ts';

export interface Library {
  readonly drills: readonly DrillRow[];
  readonly classes: readonly ClassRow[];
}

interface Undo {
  readonly title: string;
  readonly run: () => Promise<Stored<unknown>>;
}

export function useLibrary(app: App) {
  const library = useSignal<Library | null>(null);
  const problems = useSignal<readonly string[]>([]);
  const undo = useSignal<Undo | null>(null);
  const busy = useSignal(false);

  const said = (problem: StorageProblem) => {
    problems.value = [STORAGE_PROBLEMS[problem]];
  };
  async function load() {
    const [drills, classes] = await Promise.all([listDrills(), listClasses()]);
    if (!drills.ok) return said(drills.problem);
    if (!classes.ok) return said(classes.problem);
    library.value = { drills: drills.value, classes: classes.value };
  }
  useEffect(() => {
    // Another tab may have stored something meanwhile.
    const again = () => void load();
    again();
    document.addEventListener('visibilitychange', again);
    return () => document.removeEventListener('visibilitychange', again);
  }, []);

  /** Runs a change of the database, and shows what there is then. */
  async function change(run: () => Promise<Stored<unknown>>): Promise<void> {
    problems.value = [];
    const done = await run();
    if (!done.ok) return said(done.problem);
    await load();
  }

  async function remove(title: string, run: () => Promise<Stored<unknown>>, back: Undo['run']) {
    await change(run);
    undo.value = { title, run: back };
  }

  async function takeFile(file: File) {
    const read = readDrillFile(await file.text(), kernelOf(null));
    if (read.ok) {
      const row = rowOfDrill(read.file, { id: newDrillId(), group: '', ownCard: null });
      return change(() => storeDrill(row));
    }
    problems.value = [PREPARE.otherFile, ...read.problems.map(({ message }) => message)];
  }

  async function run(text: string, group: string) {
    if (busy.value) return;
    busy.value = true;
    const { drill, ...beside } = storedDrill(text);
    const title = drill.title.trim() || PREPARE.untitled;
    const answer = await startClass({ ...beside, drill: { ...drill, title } }, group);
    busy.value = false;
    if (answer.ok) return app.go({ kind: 'class', code: answer.value.code, part: 'main' });
    problems.value = [answer.message, ...(answer.problems ?? [])];
  }

  return {
    library,
    problems,
    undo,
    run,
    takeFile: (file: File) => void takeFile(file),
    copy(row: DrillRow) {
      const { drill, ...beside } = storedDrill(row.text);
      const file = { ...beside, drill: { ...drill, title: LIBRARY.copyOf(drill.title) } };
      void change(() => storeDrill(rowOfDrill(file, { ...row, id: newDrillId() })));
    },
    copyOfClass(text: string, group: string) {
      const { drill, ...beside } = storedDrill(text);
      const file = { ...beside, drill: { ...drill, title: LIBRARY.copyOf(drill.title) } };
      void change(() => storeDrill(rowOfDrill(file, { id: newDrillId(), group, ownCard: null })));
    },
    removeDrill: (row: DrillRow) =>
      void remove(
        row.title || PREPARE.untitled,
        () => removeDrill(row.id),
        () => storeDrill(row),
      ),
    removeClass: (row: ClassRow) =>
      void remove(
        row.title,
        () => removeClass(row.code),
        () => storeClass(row),
      ),
    group: (row: ClassRow, group: string) => void change(() => storeClass({ ...row, group })),
    putBack() {
      const back = undo.value?.run;
      undo.value = null;
      if (back) void change(back);
    },
  };
}
