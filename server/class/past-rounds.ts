// The rounds that a table has closed, from its log: what the report of a class is made of.
import type { Round } from '../../shared-engine/index.ts';
import type { Logged } from '../room/event.ts';
import { evolveRoom, replayRoom } from '../room/evolve.ts';

/** By number, 1 for the first. */
export function closedRounds(log: readonly Logged[]): Map<number, Round> {
  const closed = new Map<number, Round>();
  let state = replayRoom(log.slice(0, 1));
  for (const logged of log.slice(1)) {
    state = state && evolveRoom(state, logged);
    if (state?.play?.round.phase === 'closed') closed.set(state.play.number, state.play.round);
  }
  return closed;
}
