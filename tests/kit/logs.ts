// Logs for the tests of the stores, with plain events that say nothing but a name, and stores that opened.
import type { Append, AppendOutcome, LogRow, Snapshot, Store, StoredLog } from '../../server/ports.ts';
import type { OpenedStore } from '../../server/store/opened.ts';

/** The time of a log's first row; the others follow a second apart. */
export const LOG_START = 1_750_000_000_000;

/** A row of `count` events behind number `after`, which commands with these ids caused. */
export function row(after: number, count = 1, commands: readonly string[] = [], name = 'Ines'): LogRow {
  const events = Array.from({ length: count }, () => ({ kind: 'seat-taken', name }));
  return {
    after,
    version: after + count,
    at: LOG_START + 1000 * after,
    commands,
    events: JSON.stringify(events),
  };
}

/** The log of a room whose first row has one event, with as many more rows of one. */
export function newLog(more = 0): StoredLog {
  const rows = Array.from({ length: 1 + more }, (_, after) => row(after));
  return { kind: 'room', snapshot: null, rows };
}

export function snapshotAt(version: number, state = `{"seq":${version}}`): Snapshot {
  return { version, commands: [`1/${version}`], state };
}

/** Appends one row alone. */
export async function appendTo(
  store: Pick<Store, 'commit'>,
  code: string,
  appended: LogRow,
  snapshot: Snapshot | null = null,
): Promise<AppendOutcome> {
  const batch: Append[] = [{ code, row: appended, snapshot }];
  const [outcome] = await store.commit(batch);
  if (outcome === undefined) throw new Error('The store says nothing of the append.');
  return outcome;
}

/** The store that was opened; fails with the message where none was. */
export function storeOf(opened: OpenedStore): Store {
  if (!opened.ok) throw new Error(opened.message);
  return opened.store;
}
