// What the event-sourced loop has to know of a room or a class: pure functions, and the JSON of its events and state.
import type { AggregateKind } from '../ports.ts';
import type { Decision } from './decision.ts';
import type { EventCodec, Recorded } from './recorded.ts';

/** A state that knows the number of the last event in it. */
export interface Versioned {
  readonly seq: number;
}

export interface AggregateType<State extends Versioned, Event, Command> {
  readonly kind: AggregateKind;
  readonly codec: EventCodec<Event>;
  decide(state: State, command: Command): Decision<Event>;
  /** The state after the first event of a log; null where no log begins with it. */
  begin(first: Recorded<Event>): State | null;
  /** Total and silent: it believes every event of the log. */
  evolve(state: State, recorded: Recorded<Event>): State;
  /** The state as JSON text, where `event` led to it and loading may begin there later; null after other events. */
  snapshotOf(state: State, event: Event): string | null;
  /** The state that this text describes; `begun` is the state after the log's first event. Throws for other text. */
  restore(begun: State, text: string): State;
}
