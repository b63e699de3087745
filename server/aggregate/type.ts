// What the event-sourced loop has to know of a room or a class: pure functions, and the JSON of its events and state.
import type { AggregateKind } from '../ports.ts';
import type { Decision } from './decision.ts';
import type { EventCodec, Recorded } from './recorded.ts';

/** A state that knows the number of the last event in it. */
export interface Versioned {
  readonly seq: number;
}

export interface AggregateType<State extends Versioned, Event, Command> {
  /** Those of the logs that it reads. */
  readonly kinds: readonly AggregateKind[];
  readonly codec: EventCodec<Event>;
  /** `at` is the time of the events, in milliseconds since 1970. */
  decide(state: State, command: Command, at: number): Decision<Event>;
  /** The state after the first event of a log; null where no log begins with it. */
  begin(first: Recorded<Event>): State | null;
  /** Total and silent: it believes every event of the log. */
  evolve(state: State, recorded: Recorded<Event>): State;
  /** Whether the state right after this event is short, so that loading had best begin there. */
  startsAnew(event: Event): boolean;
  /** The state as JSON text; null for one in which no loading begins. */
  snapshotOf(state: State): string | null;
  /** The state that this text describes; `begun` is the state after the log's first event. Throws for other text. */
  restore(begun: State, text: string): State;
}
