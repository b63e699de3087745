// One hash for what is stored of a room or a class: the same log has the same hash in every store.
import { createHash } from 'node:crypto';
import type { LogRow, StoredLog } from '../ports.ts';

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
