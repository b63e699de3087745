// The last that a server's table told its player, for as long as the tab: a page opened anew without a network may go on from it.
import { type Table, tableSchema } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';
import { jsonOf } from './page-round.ts';

/** Null where there is nothing to go on from any more. */
export function storeLastTold(tab: TextStorage, code: string, table: Table | null): void {
  if (table === null) tab.remove(`told.${code}`);
  else tab.write(`told.${code}`, JSON.stringify(table));
}

export function readLastTold(tab: TextStorage, code: string): Table | null {
  const parsed = tableSchema.safeParse(jsonOf(tab.read(`told.${code}`)));
  return parsed.success ? parsed.data : null;
}
