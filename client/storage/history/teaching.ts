// A teacher's drills and classes in this browser's database: stored, listed, read, deleted.
import { type DrillFile, drillFileText } from '../../../shared-engine/index.ts';
import { type ClassRow, type DrillRow, type Stored, withDatabase } from './database.ts';

/** The one changed last comes first. */
export function listDrills(): Promise<Stored<readonly DrillRow[]>> {
  return withDatabase(async (database) => {
    const rows = await database.getAll('drills');
    return rows.sort((a, b) => b.changedAt - a.changedAt);
  });
}

/** Null where it is not here. */
export function readDrill(id: string): Promise<Stored<DrillRow | null>> {
  return withDatabase(async (database) => (await database.get('drills', id)) ?? null);
}

export function rowOfDrill(
  file: DrillFile,
  { id, group, ownCard }: Pick<DrillRow, 'id' | 'group' | 'ownCard'>,
): DrillRow {
  const { title, deals } = file.drill;
  const text = drillFileText(file);
  return { id, title, group, ownCard, deals: deals.length, changedAt: Date.now(), text };
}

/** In the place of the one with its id. */
export function storeDrill(row: DrillRow): Promise<Stored<string>> {
  return withDatabase((database) => database.put('drills', row));
}

export function removeDrill(id: string): Promise<Stored<void>> {
  return withDatabase((database) => database.delete('drills', id));
}

/** The one opened last comes first. */
export function listClasses(): Promise<Stored<readonly ClassRow[]>> {
  return withDatabase(async (database) => {
    const rows = await database.getAll('classes');
    return rows.sort((a, b) => b.openedAt - a.openedAt);
  });
}

/** Null where this device has not met it. */
export function readClass(code: string): Promise<Stored<ClassRow | null>> {
  return withDatabase(async (database) => (await database.get('classes', code)) ?? null);
}

/** Puts what is new over what is known of the class; one that was not known was opened `now`. */
export function noteClass(
  code: string,
  part: Partial<Omit<ClassRow, 'code'>>,
  now: number,
): Promise<Stored<void>> {
  return withDatabase(async (database) => {
    const writing = database.transaction('classes', 'readwrite');
    const known = await writing.store.get(code);
    const first: ClassRow = { code, title: '', group: '', openedAt: now, drill: null, report: null };
    void writing.store.put({ ...first, ...known, ...part });
    await writing.done;
  });
}

export function removeClass(code: string): Promise<Stored<void>> {
  return withDatabase((database) => database.delete('classes', code));
}

/** Puts a class back as it was. */
export function storeClass(row: ClassRow): Promise<Stored<string>> {
  return withDatabase((database) => database.put('classes', row));
}
