// A server for tests: the assembly that ships, on a free port of the loopback, with our clock, entropy and log.
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import type { FastifyInstance } from 'fastify';
import { buildApp } from '../../server/app.ts';
import { type Config, readConfig } from '../../server/config.ts';
import type { Metrics } from '../../server/http/metrics.ts';
import { createLog } from '../../server/log.ts';
import type { Entropy, Nodes, Store, WakeBus } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { onlyNode } from '../../server/store/nodes-memory.ts';
import { memoryTickets } from '../../server/store/tickets.ts';
import type { Backlog, Bots, Cards, DeepAnalyzer, Drills, Reviewer } from '../../server/work-ports.ts';
import { openWorkers } from '../../server/workers/workers.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { FakeClock } from './clock.ts';
import { expectDocumented } from './documented-rejections.ts';

export interface TestServer {
  readonly app: FastifyInstance;
  readonly url: string;
  readonly clock: FakeClock;
  readonly store: Store;
  /** Every line logged so far. */
  readonly logged: readonly string[];
  /** Fails where a request got a rejection that the OpenAPI document does not name for it. */
  stop(): Promise<void>;
}

export interface TestServerOptions {
  /** Names the run: seeds, codes and secrets follow from it. */
  readonly seed?: string;
  readonly settings?: Readonly<Record<string, string>>;
  readonly clock?: FakeClock;
  readonly store?: Store;
  readonly bus?: WakeBus;
  readonly nodes?: Nodes;
  readonly bots?: Bots;
  readonly reviewer?: Reviewer;
  /** First answers alone unless given. */
  readonly analyzer?: DeepAnalyzer;
  readonly drills?: Drills;
  readonly cards?: Cards;
  readonly backlog?: Backlog;
  readonly metrics?: Metrics;
  /** The stand-in for a built page unless given. */
  readonly pageFolder?: string;
}

/** A page that was not built: as many files as the server tells apart. */
export const PAGE_STAND_IN = path.join(import.meta.dirname, 'built-page');

export const NO_BACKLOG: Backlog = { waiting: 0, oldestMs: 0, isFull: false };

/**
 * The slow work of a server that has no threads, as it ships: one for all servers of a process, because preparing the
 * house card takes time. Its clock stands still: a test that moves a server's clock makes no task late.
 */
export const workers = openWorkers(
  { workers: 0, depth: 'quick', maxQueue: 1 },
  new FakeClock(),
  createLog('error'),
);

/** Bots do not pause and nothing is limited unless `settings` say so. */
export async function startServer(options: TestServerOptions = {}): Promise<TestServer> {
  const clock = options.clock ?? new FakeClock();
  const entropy = seededEntropy(options.seed ?? 'server test');
  const store = options.store ?? memoryStore();
  const logged: string[] = [];
  const config = settings({ BOT_DELAY_MS: '0', LOG_LEVEL: 'trace', ...options.settings });
  const log = createLog(config.logLevel, { write: (line) => void logged.push(line) });
  const app = await buildApp({
    config,
    log,
    clock,
    entropy,
    store,
    tickets: memoryTickets(clock, entropy),
    nodes: options.nodes ?? onlyNode(entropy),
    bus: options.bus ?? null,
    bots: options.bots ?? workers.bots,
    reviewer: options.reviewer ?? workers.reviewer,
    drills: options.drills ?? workers.drills,
    cards: options.cards ?? workers.cards,
    analyzer: options.analyzer ?? null,
    backlog: options.backlog ?? NO_BACKLOG,
    metrics: options.metrics ?? null,
    pageFolder: options.pageFolder ?? PAGE_STAND_IN,
  });
  await app.listen({ port: 0, host: '127.0.0.1' });
  const { port } = app.server.address() as AddressInfo;
  const stop = async () => {
    await app.close();
    expectDocumented(logged);
  };
  return { app, url: `http://127.0.0.1:${port}`, clock, store, logged, stop };
}

export function settings(environment: Readonly<Record<string, string>>): Config {
  const unlimited = { REQUESTS_PER_MINUTE: '0', ROOMS_PER_MINUTE: '0', SOCKETS_PER_IP: '0' };
  const read = readConfig({ ...unlimited, ...environment });
  if (!read.ok) throw new Error(read.problems.join('; '));
  return read.config;
}

/** Bytes that a test can have again. */
export function seededEntropy(seed: string): Entropy {
  const random = stream(seed, 'entropy');
  return { bytes: (count) => Uint8Array.from({ length: count }, () => random.below(256)) };
}
