// The room as it was a little while ago, so that who comes back is told what is new and not everything.
import type { Logged } from './event.ts';
import { evolveRoom, replayRoom } from './evolve.ts';
import type { RoomState } from './state.ts';

/** Events that somebody may have missed and still be told the difference: two steps and more, at a KB or so each. */
const KEPT = 16;

export class Recent {
  readonly #states = new Map<number, RoomState>();

  /** The last states that a log leads to. */
  static fromLog(log: readonly Logged[]): Recent {
    const recent = new Recent();
    let state = replayRoom(log.slice(0, Math.max(1, log.length - KEPT)));
    for (const logged of log.slice(Math.max(1, log.length - KEPT))) {
      if (state !== null) recent.keep(state);
      state = state && evolveRoom(state, logged);
    }
    if (state !== null) recent.keep(state);
    return recent;
  }

  keep(state: RoomState): void {
    this.#states.set(state.seq, state);
    this.#states.delete(state.seq - KEPT);
  }

  /** The room right after event `seq`; undefined when that is too long ago, or yet to come. */
  at(seq: number): RoomState | undefined {
    return this.#states.get(seq);
  }
}
