// Whether those who count as connected still are: asked when a room is activated, and at intervals after that.
import { errorFacts, type Log } from '../log.ts';
import type { Nodes } from '../ports.ts';
import { personsOf, type RoomState } from '../room/state.ts';
import type { SeatConnections } from './seat-connections.ts';

/** Pause between two presence checks, in milliseconds. */
export const PRESENCE_CHECK_MS = 2500;

export interface CheckedRoom {
  readonly room: { readonly state: RoomState };
  readonly connections: SeatConnections;
}

/** One question about the other servers for all of these rooms. What cannot be stored now is repaired the next time. */
export async function checkPresence(rooms: readonly CheckedRoom[], nodes: Nodes, log: Log): Promise<void> {
  try {
    const others = new Set(rooms.flatMap(({ room }) => personsOf(room.state).flatMap(nodeOf)));
    others.delete(nodes.id);
    const gone = others.size === 0 ? [] : await nodes.gone([...others]);
    await Promise.all(
      rooms.map(async ({ connections }) => {
        await connections.reconcile();
        if (gone.length > 0) await connections.withoutNodes(gone);
      }),
    );
  } catch (error) {
    log.warn(errorFacts(error), 'a presence check failed');
  }
}

function nodeOf({ presence }: ReturnType<typeof personsOf>[number]): string[] {
  return presence.kind === 'connected' ? [presence.node] : [];
}
