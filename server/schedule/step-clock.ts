// When the open step of a room was opened, by the clock of this server: another server's clock may be wrong.
import type { Clock } from '../ports.ts';
import type { RoomState } from '../room/state.ts';

export class StepClock {
  readonly #clock: Clock;
  /** When this server learned of the open step; null for one that was open when the room was activated here. */
  #seen: number | null = null;

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  /** To be called after every change of the room. */
  changed({ play: before }: RoomState, { play: now }: RoomState): void {
    const opened =
      now?.stepAt !== before?.stepAt || now?.round.resolved.length !== before?.round.resolved.length;
    if (opened) this.#seen = this.#clock.now();
  }

  /** In milliseconds since 1970. */
  stepSince({ play, at }: RoomState): number {
    return this.#seen ?? play?.stepAt ?? at;
  }
}
