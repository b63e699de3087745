// Starts the server: reads the settings, puts real things behind the ports, listens, and closes cleanly.
import path from 'node:path';
import { buildApp } from './app.ts';
import { systemClock } from './clock.ts';
import { readConfig } from './config.ts';
import { createFigures, listenForFigures } from './http/figures.ts';
import { createLog, errorFacts } from './log.ts';
import { systemEntropy } from './secrets.ts';
import { openBacking } from './store/backing.ts';
import { openWorkroom } from './work/workroom.ts';

const read = readConfig(process.env);
if (!read.ok) {
  console.error(`These settings cannot be used:\n  ${read.problems.join('\n  ')}`);
  process.exit(2);
}
const { config } = read;
const log = createLog(config.logLevel);

// Built, this file lies in dist/server beside dist/client; run from source, dist is one level up.
const source = import.meta.filename.endsWith('.ts');
const clientFolder = path.resolve(import.meta.dirname, source ? '../dist/client' : '../client');

const opened = await openBacking(config.backing, systemClock, systemEntropy);
if (!opened.ok) {
  console.error(opened.sentence);
  process.exit(1);
}
const { backing } = opened;
log.info({ rooms: config.backing.kind }, 'the rooms are open');

const workroom = openWorkroom(config.review, systemClock, log);

const figures = config.metricsPort === null ? null : createFigures();

const app = await buildApp({
  config,
  log,
  clock: systemClock,
  entropy: systemEntropy,
  store: backing.store,
  tickets: backing.tickets,
  nodes: backing.nodes,
  bus: backing.bus,
  bots: workroom.bots,
  reviewer: workroom.reviewer,
  drills: workroom.drills,
  ...(workroom.judges && { judges: workroom.judges }),
  ...(figures && { figures }),
  clientFolder,
});

const figuresListener =
  figures && config.metricsPort !== null ? await listenForFigures(figures, config.metricsPort) : null;

async function closed(): Promise<void> {
  await figuresListener?.close();
  await app.close();
  await workroom.close();
  await backing.close();
}

let closing = false;
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    if (closing) process.exit(1);
    closing = true;
    log.info({ signal }, 'closing');
    closed().then(
      () => process.exit(0),
      (error: unknown) => {
        log.error(errorFacts(error), 'closing failed');
        process.exit(1);
      },
    );
  });
}

try {
  await app.listen({ port: config.port, host: config.host });
} catch (error) {
  log.fatal(
    { port: config.port, ...errorFacts(error) },
    'the server cannot listen on that port; set PORT to another',
  );
  process.exit(1);
}
