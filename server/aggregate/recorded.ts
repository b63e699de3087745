// Events with their place in a log, and the way between them and the rows of a store.
import type { LogRow } from '../ports.ts';

/** An event with its place in the log. */
export interface Recorded<Event> {
  /** 1 for the first event of a log, then one more each time. */
  readonly seq: number;
  /** Milliseconds since 1970, by the clock of the server that wrote it. */
  readonly at: number;
  readonly event: Event;
}

/** Between events and their JSON; reading throws for what is no such event and quotes nothing of it. */
export interface EventCodec<Event> {
  textOf(events: readonly Event[]): string;
  eventsFrom(text: string): readonly Event[];
}

/** Numbers the events from `after` + 1 on. */
export function record<Event>(
  events: readonly Event[],
  { after, at }: { readonly after: number; readonly at: number },
): Recorded<Event>[] {
  return events.map((event, index) => ({ seq: after + 1 + index, at, event }));
}

export function recordedIn<Event>(
  { after, at, events }: LogRow,
  codec: EventCodec<Event>,
): Recorded<Event>[] {
  return record(codec.eventsFrom(events), { after, at });
}

/** The row of these events, all of one append. */
export function rowOf<Event>(
  recorded: readonly Recorded<Event>[],
  commands: readonly string[],
  codec: EventCodec<Event>,
): LogRow {
  const [first, last] = [recorded[0]!, recorded.at(-1)!];
  const events = codec.textOf(recorded.map(({ event }) => event));
  return { after: first.seq - 1, version: last.seq, at: last.at, commands, events };
}
