// The room as it is and as it was a little while ago, so that who comes back is told what is new and not everything.
import type { Logged } from './event.ts';
import { evolveRoom, replayRoom } from './evolve.ts';
import type { RoomState } from './state.ts';

/** Events that somebody may have missed and still be told the difference: two steps and more, at a KB or so each. */
const KEPT = 16;

export class Recent {
  readonly #states = new Map<number, RoomState>();
  #latest: RoomState;

  private constructor(first: RoomState) {
    this.#latest = first;
    this.keep(first);
  }

  /** The last states that a log leads to; null when it does not begin with the opening. */
  static fromLog(log: readonly Logged[]): Recent | null {
    const old = Math.max(1, log.length - KEPT);
    const first = replayRoom(log.slice(0, old));
    if (first === null) return null;
    const recent = new Recent(first);
    for (const logged of log.slice(old)) recent.keep(evolveRoom(recent.latest, logged));
    return recent;
  }

  get latest(): RoomState {
    return this.#latest;
  }

  keep(state: RoomState): void {
    this.#latest = state;
    this.#states.set(state.seq, state);
    this.#states.delete(state.seq - KEPT);
  }

  /** The room right after event `seq`; undefined when that is too long ago, or yet to come. */
  at(seq: number): RoomState | undefined {
    return this.#states.get(seq);
  }
}
