// A table in the page with what it needs of this browser; bots, card and review are fetched when it opens.
import type { Connection } from '../connection/connection.ts';
import { randomHex } from '../connection/random.ts';
import { browserTimer } from '../connection/socket.ts';
import type { LocalTablePorts } from '../practice/local-table.ts';
import { lastingStorage } from '../storage/browser-storage.ts';

/** As the server's own setting of this name is, unless it was given another. */
const BOT_DELAY_MS = 900;

/** What tables in the page do not share. */
export type PageTable = Omit<
  LocalTablePorts,
  'botDelay' | 'newSeed' | 'startTimer' | 'startOwnAnalyses' | 'loadSimd'
>;

/** Makes a table in the page once its parts are here. */
export async function fetchPageTable(): Promise<(table: PageTable) => Connection> {
  const [{ localTable }, { loadSimd }, { startOwnAnalyses }] = await Promise.all([
    import('../practice/local-table.ts'),
    import('../workers/deep-analysis.ts'),
    import('../workers/own-analyses.ts'),
  ]);
  return (table) =>
    localTable({
      ...table,
      botDelay: Number(lastingStorage.read('bot-delay') ?? BOT_DELAY_MS),
      newSeed: () => randomHex(32),
      startTimer: browserTimer,
      startOwnAnalyses,
      loadSimd: () => loadSimd(),
    });
}
