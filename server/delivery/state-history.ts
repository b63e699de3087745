// The room as it was a little while ago, so that who comes back is told what is new and not everything.
import type { RoomState } from '../room/state.ts';

/** States remembered, one for each append that somebody may have missed: two steps and more, at a KB or so each. */
const MAX_STATES = 16;

export class StateHistory {
  readonly #states = new Map<number, RoomState>();

  constructor(states: readonly RoomState[]) {
    this.add(states);
  }

  /** States after one another, the latest last. */
  add(states: readonly RoomState[]): void {
    for (const state of states.slice(-MAX_STATES)) this.#states.set(state.seq, state);
    for (const seq of this.#states.keys()) {
      if (this.#states.size <= MAX_STATES) return;
      this.#states.delete(seq);
    }
  }

  /** The room right after event `seq`; undefined where that is too long ago, or nothing was told then. */
  at(seq: number): RoomState | undefined {
    return this.#states.get(seq);
  }
}
