// When the open step of a room ends by the clock.
import type { RoomState } from './state.ts';

/** In milliseconds since 1970 (rule K1), or null where there is no deadline. */
export function deadlineOf({ terms, play }: RoomState, stepSince: number): number | null {
  if (terms.deadline === null || play === null || play.round.phase === 'closed') return null;
  return stepSince + (terms.deadline + play.moreTime) * 1000;
}
