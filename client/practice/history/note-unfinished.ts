// Follows a table and notes where its round goes on, from its first choice until it is over or its seat is gone.
import type { RoundPlace, Table } from '../../../shared-engine/index.ts';
import { type Room, type RoomState, seatedAt } from '../../room/room.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import { forgetUnfinished, noteUnfinished } from '../../storage/unfinished.ts';

/** Where the rounds of a room go on. */
export interface GoesOn {
  /** To the deal that is on the table now. */
  readonly path: () => string;
  readonly isInPage: boolean;
}

export interface UnfinishedPorts extends GoesOn {
  readonly placeOf: (table: Table, home: RoomState['home']) => RoundPlace;
  readonly notes: TextStorage;
}

/** Returns a function that ends it. */
export function followUnfinished(room: Pick<Room, 'state'>, ports: UnfinishedPorts): () => void {
  const { path, isInPage, placeOf, notes } = ports;
  let last: string | null = null;
  return room.state.subscribe(({ table, connection, home }) => {
    const isGone = connection.kind === 'ended' && connection.reason === 'no-room';
    if (table === null && !isGone) return;
    const at = path();
    const number = !isGone && table !== null && isBegunAt(table) ? table.round : null;
    const now = `${at} ${number}`;
    // Every tile that is laid out is another state.
    if (now === last) return;
    last = now;
    if (table === null || number === null) forgetUnfinished(notes, at);
    else
      noteUnfinished(notes, { place: placeOf(table, home), table: table.code, number, path: at, isInPage });
  });
}

/** Whether somebody here has chosen in a round that is not over. */
function isBegunAt(table: Table): boolean {
  const seated = seatedAt(table);
  if (seated === null || seated.view.stage.phase === 'closed') return false;
  return seated.view.answer !== null || seated.view.record.steps.length > 0;
}
