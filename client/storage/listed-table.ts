// On which club's page the host of a table has put it: this device knows, also after its tab was closed.
import * as z from 'zod';
import { CLUB_LIMITS } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

const KEY = 'listed';
/**
 * Tables that are remembered, those put on a page last: a table that is gone is told of by nobody. As many as stand on one
 * page at once (rule CB2).
 */
const MOST = CLUB_LIMITS.tables;

const listedSchema = z.array(z.strictObject({ table: z.string(), club: z.string() })).readonly();

/** Code of the club; null where the table was put on no page on this device, or taken off again. */
export function readListed(storage: TextStorage, table: string): string | null {
  return all(storage).find((one) => one.table === table)?.club ?? null;
}

export function noteListed(storage: TextStorage, table: string, club: string | null): void {
  const others = all(storage).filter((one) => one.table !== table);
  const now = club === null ? others : [{ table, club }, ...others].slice(0, MOST);
  storage.write(KEY, JSON.stringify(now));
}

function all(storage: TextStorage): z.infer<typeof listedSchema> {
  try {
    const parsed = listedSchema.safeParse(JSON.parse(storage.read(KEY) ?? '[]'));
    return parsed.success ? parsed.data : [];
  } catch {
    return [];
  }
}
