// The rounds that a table has closed, from its whole log: what the report of a class is made of.
import type { Round } from '../../shared-engine/index.ts';
import { recordedIn } from '../aggregate/recorded.ts';
import type { StoredLog } from '../ports.ts';
import { beginRoom, evolveRoom } from '../room/evolve.ts';
import { roomEvents } from '../room/stored-event.ts';

/** By number, 1 for the first. */
export function closedRounds({ rows }: Pick<StoredLog, 'rows'>): Map<number, Round> {
  const closed = new Map<number, Round>();
  const [first, ...rest] = rows.flatMap((row) => recordedIn(row, roomEvents));
  let state = first ? beginRoom(first) : null;
  for (const recorded of rest) {
    state = state && evolveRoom(state, recorded);
    if (state?.play?.round.phase === 'closed') closed.set(state.play.number, state.play.round);
  }
  return closed;
}
