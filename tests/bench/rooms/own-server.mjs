// @ts-check
// Our own built server as the load benchmark measures it: rooms in an SQLite file, no limits for one address, empty reviews.
import { buildApp } from '../../../dist/server/app.js';
import { systemClock } from '../../../dist/server/clock.js';
import { readConfig } from '../../../dist/server/config.js';
import { BUILT_PAGE } from '../../../dist/server/http/pages.js';
import { createLog } from '../../../dist/server/log.js';
import { systemEntropy } from '../../../dist/server/secrets.js';
import { openStorage } from '../../../dist/server/store/storage.js';
import { openWorkers } from '../../../dist/server/workers/workers.js';

/**
 * The peers review nothing, so nothing is reviewed here, but where the command says "reviews".
 * @type {import('../../../dist/server/work-ports.js').Reviewer}
 */
const reviewer = {
  review: async ({ record: { seat }, card }) => ({
    seat,
    cardId: card.file.id,
    cardName: card.file.name,
    sections: {},
    toGoStart: 0,
    toGoEnd: 0,
    firstDiscard: null,
    basis: { passesTried: 0, arrivals: 0, smallLoss: 0 },
    choices: [],
    ledger: null,
    story: { headline: [], opened: 0, choices: [], fed: null, ledger: [] },
    method: '',
  }),
};

const read = readConfig({
  LOG_LEVEL: 'error',
  REQUESTS_PER_MINUTE: '0',
  ROOMS_PER_MINUTE: '0',
  SOCKETS_PER_IP: '0',
  MESSAGES_PER_SECOND: '10000',
  ...process.env,
});
if (!read.ok) throw new Error(read.problems.join('; '));
const { config } = read;
const opened = await openStorage(config.storage, systemClock, systemEntropy);
if (!opened.ok) throw new Error(opened.message);
const log = createLog(config.logLevel);
// No thread beside the one that is measured.
const workers = openWorkers({ workers: 0, depth: 'quick', maxQueue: 1 }, systemClock, log);
const app = await buildApp({
  ...opened.storage,
  ...workers,
  config,
  log,
  clock: systemClock,
  entropy: systemEntropy,
  reviewer: process.argv.includes('reviews') ? workers.reviewer : reviewer,
  metrics: null,
  pageFolder: BUILT_PAGE,
});
const url = await app.listen({ port: 0, host: '127.0.0.1' });

// A line on standard input is answered with the bytes in use, everything else collected before.
process.stdin.on('data', () => {
  globalThis.gc?.();
  globalThis.gc?.();
  const { rss, heapUsed, external, arrayBuffers } = process.memoryUsage();
  console.log(`memory ${JSON.stringify({ rss, heapUsed, external, arrayBuffers })}`);
});
// Its parent is gone.
process.stdin.on('end', () => process.exit());
console.log(url);
