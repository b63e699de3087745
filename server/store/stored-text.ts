// How texts lie in the columns of a database, and which logs and rows every store turns away.
import type { AggregateKind, LogRow, StoredLog } from '../ports.ts';

/**
 * A text as it lies in a column: the inside of its JSON string. Ordinary texts stay as they are, and those that a
 * database would refuse or mend (a zero byte, half a surrogate pair) stay apart from one another.
 */
export function storedText(text: string): string {
  return JSON.stringify(text).slice(1, -1);
}

export function plainText(stored: string): string {
  return String(JSON.parse(`"${stored}"`));
}

/** The order of `Store.codes`: by the bytes of the stored text, as the databases have it. */
export function byBytes(a: string, b: string): number {
  return Buffer.compare(Buffer.from(storedText(a)), Buffer.from(storedText(b)));
}

export function commandsFrom(stored: string): readonly string[] {
  const list: unknown = JSON.parse(stored);
  return Array.isArray(list) ? list.map(String) : [];
}

const KINDS: readonly AggregateKind[] = ['room', 'same-deal', 'class', 'class-table', 'published', 'club'];

/** Whether logs of this kind are stored as long as classes are; the databases say the same in SQL. */
export function isOfClass(kind: AggregateKind): boolean {
  return kind !== 'room' && kind !== 'same-deal';
}

export function kindFrom(stored: string): AggregateKind {
  const kind = KINDS.find((known) => known === stored);
  if (kind !== undefined) return kind;
  throw new Error('A stored log is of no known kind; was it written by a newer version?');
}

/** Whether a row holds at least one event and a whole time. */
export function isRow({ after, version, at }: LogRow): boolean {
  return [after, version, at].every(Number.isSafeInteger) && after >= 0 && version > after;
}

/** Bytes that a row counts toward the size of its log. */
export function bytesOf({ commands, events }: LogRow): number {
  return Buffer.byteLength(JSON.stringify(commands)) + Buffer.byteLength(events);
}

/** Throws unless the log begins with its first event and leaves out nothing but what its snapshot covers. */
export function checkLog({ rows, snapshot }: StoredLog): void {
  let last = 0;
  for (const row of rows) {
    const gap = row.after !== last && (last === 0 || row.after > (snapshot?.version ?? 0));
    if (gap || !isRow(row)) throw new Error(`A log cannot be stored: row ${row.after} to ${row.version}.`);
    last = row.version;
  }
  if (last === 0 || last < (snapshot?.version ?? 0))
    throw new Error('A log without its rows cannot be stored.');
}
