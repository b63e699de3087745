// Starts the server: reads the settings, puts the real parts behind the ports, listens, and closes cleanly.
import './check-node.ts';
import { buildApp } from './app.ts';
import { systemClock } from './clock.ts';
import { readConfig } from './config.ts';
import { createMetrics, listenForMetrics, type MetricsListener } from './http/metrics.ts';
import { BUILT_PAGE } from './http/pages.ts';
import { createLog, errorFacts } from './log.ts';
import { systemEntropy } from './secrets.ts';
import { listenProblem } from './start-problems.ts';
import { openStorage } from './store/storage.ts';
import { openWorkers } from './workers/workers.ts';

const read = readConfig(process.env);
if (!read.ok) {
  console.error(`These settings cannot be used:\n  ${read.problems.join('\n  ')}`);
  process.exit(2);
}
const { config } = read;
const log = createLog(config.logLevel);

const opened = await openStorage(config.storage, systemClock, systemEntropy);
if (!opened.ok) {
  console.error(opened.message);
  process.exit(1);
}
const { storage } = opened;
log.info({ store: config.storage.kind }, 'the store is open');

const workers = openWorkers(config.review, systemClock, log);
const metrics = config.metrics && createMetrics();
metrics?.observeWork(workers);

const app = await buildApp({
  config,
  log,
  clock: systemClock,
  entropy: systemEntropy,
  store: storage.store,
  tickets: storage.tickets,
  nodes: storage.nodes,
  bus: storage.bus,
  bots: workers.bots,
  reviewer: workers.reviewer,
  drills: workers.drills,
  cards: workers.cards,
  analyzer: workers.analyzer,
  backlog: workers.backlog,
  metrics,
  pageFolder: BUILT_PAGE,
});

let metricsListener: MetricsListener | null = null;

async function close(): Promise<void> {
  await metricsListener?.close();
  await app.close();
  await workers.close();
  await storage.close();
}

let isClosing = false;
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    if (isClosing) process.exit(1);
    isClosing = true;
    log.info({ signal }, 'closing');
    close().then(
      () => process.exit(0),
      (error: unknown) => {
        log.error(errorFacts(error), 'closing failed');
        process.exit(1);
      },
    );
  });
}

async function listen(): Promise<string | null> {
  const { port, host } = config;
  try {
    if (metrics && config.metrics) metricsListener = await listenForMetrics(metrics, config.metrics);
  } catch (error) {
    return listenProblem(error, 'METRICS_', config.metrics?.port ?? 0);
  }
  try {
    await app.listen({ port, host });
    return null;
  } catch (error) {
    return listenProblem(error, '', port);
  }
}

const problem = await listen();
if (problem !== null) {
  console.error(problem);
  process.exit(1);
}
