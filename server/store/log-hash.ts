// One hash for what a room is: the same log has the same hash in every store.
import { createHash } from 'node:crypto';
import type { Logged } from '../room/event.ts';

/** SHA-256 in hexadecimal digits of the log's events, one line of JSON each, the keys in order. */
export function logHash(log: readonly Logged[]): string {
  const hash = createHash('sha256');
  for (const logged of log) hash.update(`${JSON.stringify(logged, inOrder)}\n`);
  return hash.digest('hex');
}

function inOrder(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
