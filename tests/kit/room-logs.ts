// The events of rooms, as tests put them into a store and find them there.
import { type Recorded, recordedIn } from '../../server/aggregate/recorded.ts';
import type { Store, StoredLog } from '../../server/ports.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { roomEvents } from '../../server/room/stored-event.ts';

/** All events of a stored room from the first one on; null where none is stored. */
export async function eventsOf(
  store: Pick<Store, 'history'>,
  code: string,
): Promise<Recorded<RoomEvent>[] | null> {
  const log = await store.history(code);
  return log?.rows.flatMap((one) => recordedIn(one, roomEvents)) ?? null;
}

/** A room's log with a row for each event, as a test puts it into a store. */
export function logOf(recorded: readonly Recorded<RoomEvent>[]): StoredLog {
  const rows = recorded.map(({ seq, at, event }) => {
    return { after: seq - 1, version: seq, at, commands: [], events: roomEvents.textOf([event]) };
  });
  return { kind: 'room', snapshot: null, rows };
}
