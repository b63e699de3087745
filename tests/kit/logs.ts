// Logs for the tests of the stores, and the events of a stored room for all others.
import { type Recorded, recordedIn } from '../../server/aggregate/recorded.ts';
import type { Append, AppendOutcome, LogRow, Snapshot, Store, StoredLog } from '../../server/ports.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { roomEvents } from '../../server/room/stored-event.ts';

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

/** All events of a stored room from the first one on; null where none is stored. */
export async function eventsOf(
  store: Pick<Store, 'history'>,
  code: string,
): Promise<Recorded<RoomEvent>[] | null> {
  const log = await store.history(code);
  return log && log.rows.flatMap((one) => recordedIn(one, roomEvents));
}

/** A room's log as one row, as a test puts it into a store. */
export function logOf(recorded: readonly Recorded<RoomEvent>[]): StoredLog {
  const rows = recorded.map(({ seq, at, event }) => {
    return { after: seq - 1, version: seq, at, commands: [], events: roomEvents.textOf([event]) };
  });
  return { kind: 'room', snapshot: null, rows };
}
