// On which club's page the host of a table has put it: the tab knows, also after a reload and once tiles are dealt.
import type { TextStorage } from './browser-storage.ts';

const listedKey = (table: string): string => `listed.${table}`;

/** Code of the club; null where the table was put on no page in this tab, or taken off again. */
export function readListed(storage: TextStorage, table: string): string | null {
  return storage.read(listedKey(table));
}

export function noteListed(storage: TextStorage, table: string, club: string | null): void {
  if (club === null) storage.remove(listedKey(table));
  else storage.write(listedKey(table), club);
}
