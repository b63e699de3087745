// How an event lies in a table: one row with its number, its time, its command and its body as JSON text.
import type { Logged } from '../room/event.ts';
import { eventFrom, textOf } from './stored-event.ts';

export interface EventRow {
  readonly seq: number;
  readonly at: number;
  readonly cmd_id: string | null;
  readonly kind: string;
  readonly body: string;
}

export function rowOf({ seq, at, command, event }: Logged): EventRow {
  const cmd_id = command === null ? null : keptText(command);
  return { seq, at, cmd_id, kind: event.kind, body: textOf(event) };
}

export function loggedFrom({ seq, at, cmd_id, body }: Omit<EventRow, 'kind'>): Logged {
  return { seq, at, command: cmd_id === null ? null : plainText(cmd_id), event: eventFrom(body) };
}

/**
 * A text as it lies in a column: the inside of its JSON string. Ordinary texts stay as they are, and those that a
 * database would refuse or mend (a zero byte, half a surrogate pair) stay apart from one another.
 */
export function keptText(text: string): string {
  return JSON.stringify(text).slice(1, -1);
}

export function plainText(kept: string): string {
  return String(JSON.parse(`"${kept}"`));
}

/** Throws unless the events are numbered `after` + 1 and on, at least one, each at a whole millisecond. */
export function checkNumbers(after: number, log: readonly Logged[]): void {
  if (log.length === 0) throw new Error('There is no event to keep.');
  log.forEach(({ seq, at }, index) => {
    if (seq !== after + 1 + index) throw new Error(`Event ${after + 1 + index} of a room has number ${seq}.`);
    if (!Number.isSafeInteger(at)) throw new Error(`Event ${seq} of a room has no whole time.`);
  });
}

export function commandsOf(log: readonly Logged[]): string[] {
  return log.flatMap(({ command }) => (command === null ? [] : [command]));
}

/** The order of `Store.codes`: by the bytes of the kept text, as the databases have it. */
export function byBytes(a: string, b: string): number {
  return Buffer.compare(Buffer.from(keptText(a)), Buffer.from(keptText(b)));
}
