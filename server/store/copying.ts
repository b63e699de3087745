// Copies every log from one store to another and checks afterwards that each arrived as it was.
import { createHash } from 'node:crypto';
import type { LogRow, Store, StoredLog } from '../ports.ts';
import { logTag } from '../secrets.ts';

/** Codes asked for at once. */
const PAGE = 200;

export interface CopyReport {
  /** Rooms and classes. */
  readonly rooms: number;
  readonly events: number;
  /** Logs that were written; the others were there already. */
  readonly written: number;
  /** Logs whose hash is not the same on both sides, by a tag that is not their code. */
  readonly differing: readonly string[];
}

/** Logs that are in the target already are compared, never overwritten. */
export async function copyLogs(from: Store, to: Store): Promise<CopyReport> {
  let written = 0;
  for await (const code of codesOf(from)) {
    const log = await from.history(code);
    if (log !== null && (await to.create(code, log)) === 'created') written++;
  }
  // The source is read anew: a room that went on meanwhile must be noticed.
  let rooms = 0;
  let events = 0;
  const differing: string[] = [];
  for await (const code of codesOf(from)) {
    const [source, target] = [await from.history(code), await to.history(code)];
    if (source === null) continue;
    rooms++;
    events += source.rows.at(-1)?.version ?? 0;
    if (target === null || logHash(source) !== logHash(target)) differing.push(logTag(code));
  }
  return { rooms, events, written, differing };
}

async function* codesOf(store: Store): AsyncGenerator<string> {
  let page = await store.codes(null, PAGE);
  while (page.length > 0) {
    yield* page;
    page = await store.codes(page.at(-1)!, PAGE);
  }
}

/** SHA-256 in hexadecimal digits of the log's kind, its snapshot and its rows, one line of JSON each. */
export function logHash({ kind, snapshot, rows }: StoredLog): string {
  const hash = createHash('sha256');
  const snap = snapshot && [snapshot.version, snapshot.commands, snapshot.state];
  for (const part of [kind, snap, ...rows.map(listOf)]) hash.update(`${JSON.stringify(part)}\n`);
  return hash.digest('hex');
}

function listOf({ after, version, at, commands, events }: LogRow): readonly unknown[] {
  return [after, version, at, commands, events];
}
