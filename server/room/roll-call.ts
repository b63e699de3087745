// Whether those who count as connected still are: asked when a room comes to life, and at intervals after that.
import { errorFacts, type Log } from '../log.ts';
import type { Nodes } from '../ports.ts';
import type { LiveRoom } from './live.ts';
import { personsOf } from './state.ts';

/** Pause between two roll calls, in milliseconds. */
export const ROLL_CALL_MS = 2500;

/** One question about the other servers for all of these rooms. What cannot be kept now is made good the next time. */
export async function callRoll(rooms: readonly LiveRoom[], nodes: Nodes, log: Log): Promise<void> {
  try {
    const others = new Set(rooms.flatMap(({ room }) => personsOf(room.state).flatMap(nodeOf)));
    others.delete(nodes.id);
    const gone = others.size === 0 ? [] : await nodes.gone([...others]);
    await Promise.all(
      rooms.map(async ({ table }) => {
        await table.makeGood();
        if (gone.length > 0) await table.withoutNodes(gone);
      }),
    );
  } catch (error) {
    log.warn(errorFacts(error), 'a roll call failed');
  }
}

function nodeOf({ presence }: ReturnType<typeof personsOf>[number]): string[] {
  return presence.kind === 'here' ? [presence.node] : [];
}
