// Our own server as the load benchmark measures it: rooms in an SQLite file, no limits an address, one review for all.
import type { AddressInfo } from 'node:net';
import { buildApp } from '../../../server/app.ts';
import { systemClock } from '../../../server/clock.ts';
import { readConfig } from '../../../server/config.ts';
import { createLog } from '../../../server/log.ts';
import type { Reviewer } from '../../../server/ports.ts';
import { systemEntropy } from '../../../server/secrets.ts';
import { openBacking } from '../../../server/store/backing.ts';
import { botsInProcess } from '../../../server/work/bots.ts';
import { reviewerInProcess } from '../../../server/work/reviewer.ts';

/** Judging is measured by the benchmark `review`; here the first review made goes to everybody. */
function firstReviewForAll(): Reviewer {
  let first: ReturnType<Reviewer['review']> | null = null;
  return {
    review(record, card) {
      first ??= reviewerInProcess.review(record, card);
      return first;
    },
  };
}

const read = readConfig({
  LOG_LEVEL: 'error',
  REQUESTS_PER_MINUTE: '0',
  ROOMS_PER_MINUTE: '0',
  SOCKETS_PER_ADDRESS: '0',
  ...process.env,
});
if (!read.ok) throw new Error(read.problems.join('; '));
const { config } = read;
const opened = await openBacking(config.backing, systemClock, systemEntropy);
if (!opened.ok) throw new Error(opened.sentence);
const log = createLog(config.logLevel);
const app = await buildApp({
  ...opened.backing,
  config,
  log,
  clock: systemClock,
  entropy: systemEntropy,
  bots: botsInProcess(log),
  reviewer: firstReviewForAll(),
  clientFolder: 'none',
});
await app.listen({ port: 0, host: '127.0.0.1' });

// A line on standard input is answered with the bytes in use, everything else collected before.
process.stdin.on('data', () => {
  globalThis.gc?.();
  globalThis.gc?.();
  const { rss, heapUsed, external, arrayBuffers } = process.memoryUsage();
  console.log(`memory ${JSON.stringify({ rss, heapUsed, external, arrayBuffers })}`);
});
// Its parent is gone.
process.stdin.on('end', () => process.exit());
const { port } = app.server.address() as AddressInfo;
console.log(`http://127.0.0.1:${port}`);
