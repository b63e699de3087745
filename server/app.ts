// The HTTP server with everything it answers, put together from ports; it does not listen by itself.
import fastifyCookie from '@fastify/cookie';
import fastifyHelmet from '@fastify/helmet';
import fastifyRateLimit from '@fastify/rate-limit';
import fastifyWebsocket from '@fastify/websocket';
import Fastify, { type FastifyBaseLogger, type FastifyInstance, LogController } from 'fastify';
import type { Logger } from 'pino';
import { HOUSE_CARD, HOUSE_CARD_PATH, MAX_FRAME_BYTES } from '../shared-engine/index.ts';
import { Committer } from './aggregate/committer.ts';
import { Classes } from './class/classes.ts';
import { CLASS_TABLE } from './class/table-policy.ts';
import { Clubs } from './club/clubs.ts';
import type { Config } from './config.ts';
import { addressKey } from './http/address-key.ts';
import { botRoutes } from './http/bot-seats.ts';
import { classDrillRoutes } from './http/class-drill.ts';
import { classKeyRoutes } from './http/class-keys.ts';
import { classRoutes } from './http/classes.ts';
import { clubRoutes } from './http/clubs.ts';
import { documentRoutes } from './http/documents.ts';
import { answerBrokenRequest, answerError, answerErrors } from './http/errors.ts';
import type { Metrics } from './http/metrics.ts';
import { isOriginAllowed } from './http/origin.ts';
import { hasPage, isForPage, servePages } from './http/pages.ts';
import { classPersonalDataRoutes, roomPersonalDataRoutes } from './http/personal-data.ts';
import { publishedRoutes } from './http/published-drills.ts';
import { rejectionIn, rejectWith } from './http/rejections.ts';
import { roomRoutes } from './http/rooms.ts';
import { sameDealRoutes } from './http/same-deal.ts';
import { requireTls, securityHeaders } from './http/security-headers.ts';
import { statusRoutes } from './http/status.ts';
import { errorFacts } from './log.ts';
import { playingCard } from './playing-card.ts';
import type { Clock, Entropy, Nodes, Store, Tickets, WakeBus } from './ports.ts';
import { PublishedDrills } from './published/published-drills.ts';
import { Registry } from './registry/registry.ts';
import { sharedAnalyzer } from './reviews/shared-analyses.ts';
import { sharedReviewer } from './reviews/shared-reviews.ts';
import { FRIENDS_TABLE, SOLO_TABLE } from './room/policy.ts';
import { measuredStore } from './store/measured-store.ts';
import type { Backlog, Bots, Cards, DeepAnalyzer, Drills, Reviewer } from './work-ports.ts';
import { botsWithFallback } from './workers/bots-with-fallback.ts';
import { Gateway } from './ws/gateway.ts';

/** Largest body of a request in bytes: room for a card file. */
export const BODY_LIMIT = 512 * 1024;

/** How long a client may take to send the head of a request, and all of it, in milliseconds; then it is cut off. */
const HEAD_TIMEOUT_MS = 10_000;
const REQUEST_TIMEOUT_MS = 30_000;
/** How often requests are held against that, in milliseconds. */
const TIMEOUT_CHECK_MS = 2_000;
/** Connections beyond the sockets of people who play, so that a page still loads when all of those are open. */
const CONNECTION_HEADROOM = 1_000;

export interface AppPorts {
  readonly config: Config;
  readonly log: Logger;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly store: Store;
  readonly tickets: Tickets;
  readonly nodes: Nodes;
  /** Null where no other server uses the same store. */
  readonly bus: WakeBus | null;
  readonly bots: Bots;
  readonly reviewer: Reviewer;
  readonly drills: Drills;
  readonly cards: Cards;
  /** Null for first answers alone. */
  readonly analyzer: DeepAnalyzer | null;
  /** Work that waits for the bots and reviewers above. */
  readonly backlog: Backlog;
  /** Null where the operator asks for none. */
  readonly metrics: Metrics | null;
  /** Folder of the built page. */
  readonly pageFolder: string;
}

/**
 * The one assembly: main.ts gives it the real ports, the tests their own. Closing the instance ends all sockets with
 * `restarting` and waits until what was begun is stored.
 */
export async function buildApp(given: AppPorts): Promise<FastifyInstance> {
  const { config, log, clock, entropy, tickets, backlog, metrics } = given;
  const store = metrics ? measuredStore(given.store, metrics) : given.store;
  const ports = { ...given, store };
  const { limits } = config;
  const app = emptyApp(config, log);
  app.server.maxConnections = limits.sockets + CONNECTION_HEADROOM;
  const servesPages = hasPage(ports.pageFolder);
  answerErrors(app, servesPages);
  const { registry, classes, published, clubs } = roomsAndClasses(ports);
  const gateway = new Gateway({
    registry,
    tickets,
    clock,
    log,
    metrics,
    maxSockets: limits.sockets,
    maxPerIp: limits.socketsPerIp,
    perSecond: limits.messagesPerSecond,
  });
  metrics?.observe({ rooms: () => registry.active, sockets: () => gateway.sockets });
  logRequests(app, metrics);
  await registerPlugins(app, config, async () => {
    await classes.close();
    await published.close();
    await clubs.close();
    await registry.close();
    gateway.restart(entropy);
  });

  statusRoutes(app, { store, backlog, clock, log });
  app.get(HOUSE_CARD_PATH, async () => HOUSE_CARD);
  const { roomsPerMinute } = limits;
  const { drills, cards } = ports;
  roomRoutes(app, { registry, tickets, entropy, clock, cards, roomsPerMinute });
  botRoutes(app, { registry, entropy });
  roomPersonalDataRoutes(app, { registry, store });
  const { timing } = config;
  const lessons = { classes, registry, clock, entropy, drills, cards, roomsPerMinute, timing };
  classRoutes(app, lessons);
  classKeyRoutes(app, lessons);
  classDrillRoutes(app, lessons);
  sameDealRoutes(app, lessons);
  const { publicAddress } = config;
  publishedRoutes(app, {
    published,
    store,
    entropy,
    clock,
    drills,
    cards,
    roomsPerMinute,
    timing,
    publicAddress,
  });
  clubRoutes(app, {
    clubs,
    registry,
    store,
    published,
    clock,
    entropy,
    roomsPerMinute,
    publicAddress,
    idleMs: timing.roomUnload,
    keptMs: timing.classRetention,
  });
  classPersonalDataRoutes(app, { classes, store });
  documentRoutes(app);
  gateway.listen(app);
  if (servesPages) await servePages(app, ports.pageFolder);
  return app;
}

function emptyApp({ trustedProxyHops }: Config, log: Logger): FastifyInstance {
  const loggerInstance: FastifyBaseLogger = log;
  return Fastify({
    loggerInstance,
    // The address of a request holds a room's code; what may be logged is logged by `logRequests`.
    logController: new LogController({ disableRequestLogging: true, requestIdLogLabel: 'request' }),
    trustProxy: (_, hop) => hop < trustedProxyHops,
    bodyLimit: BODY_LIMIT,
    requestTimeout: REQUEST_TIMEOUT_MS,
    http: { headersTimeout: HEAD_TIMEOUT_MS, connectionsCheckingInterval: TIMEOUT_CHECK_MS },
    forceCloseConnections: true,
    frameworkErrors: answerError,
    clientErrorHandler: answerBrokenRequest,
  });
}

function roomsAndClasses(ports: AppPorts) {
  const { clock, log, entropy, nodes, store, bus, metrics } = ports;
  const { limits, timing } = ports.config;
  const reviewer = sharedReviewer(ports.reviewer);
  const analyzer = ports.analyzer && sharedAnalyzer(ports.analyzer);
  const committer = new Committer(store);
  const registry = new Registry({
    clock,
    log,
    entropy,
    nodes,
    store,
    bus,
    committer,
    limits,
    timing,
    playingCard,
    policies: { alone: SOLO_TABLE, friends: FRIENDS_TABLE, class: CLASS_TABLE },
    reviewer: ports.reviewer,
    analyzer: ports.analyzer,
    metrics,
    shared: { reviewer, analyzer },
    bots: botsWithFallback(ports.bots, clock, log),
  });
  const classes = new Classes({
    clock,
    log,
    entropy,
    store,
    bus,
    committer,
    limits,
    timing,
    playingCard,
    registry,
    reviewer,
    analyzer,
    afresh: ports.analyzer,
    publicAddress: ports.config.publicAddress,
  });
  const published = new PublishedDrills({
    clock,
    log,
    entropy,
    store,
    bus,
    committer,
    limits,
    timing,
    playingCard,
    drills: ports.drills,
    reviewer,
    // Nobody waits for these, and nothing in them is a player's.
    analyzer: ports.analyzer,
  });
  const clubs = new Clubs({ clock, log, entropy, store, bus, committer, limits, timing });
  return { registry, classes, published, clubs };
}

function logRequests(app: FastifyInstance, metrics: Metrics | null): void {
  app.addHook('onResponse', async ({ method, routeOptions, log }, reply) => {
    const labels = { method, route: routeOptions.url ?? 'unknown', status: reply.statusCode };
    const rejection = rejectionIn(reply);
    metrics?.requestFinished(labels, reply.elapsedTime);
    if (rejection !== null) metrics?.rejected('request', rejection);
    log.info({ ...labels, rejection: rejection ?? undefined, ms: Math.round(reply.elapsedTime) }, 'request');
  });
}

async function registerPlugins(
  app: FastifyInstance,
  config: Config,
  preClose: () => Promise<void>,
): Promise<void> {
  const { requestsPerMinute } = config.limits;
  await app.register(fastifyHelmet, securityHeaders);
  requireTls(app, config.hstsDays);
  await app.register(fastifyCookie);
  await app.register(fastifyRateLimit, {
    global: requestsPerMinute > 0,
    max: requestsPerMinute,
    timeWindow: '1 minute',
    keyGenerator: (request) => addressKey(request.ip),
    // A class behind one router loads the page at once, and a browser stores its files for good.
    allowList: isForPage,
    errorResponseBuilder: () => Object.assign(new Error('too fast'), { statusCode: 429 }),
  });
  await app.register(fastifyWebsocket, {
    options: {
      maxPayload: MAX_FRAME_BYTES,
      perMessageDeflate: false,
      // Broken UTF-8 gets a rejection in words instead of a cut connection; a frame is checked when it is read.
      skipUTF8Validation: true,
    },
    // The socket closes itself with the code that fits; here it is only logged.
    errorHandler(error, socket) {
      app.log.info(errorFacts(error), 'a socket failed');
      socket.close();
    },
    preClose(done) {
      preClose().then(() => done(), done);
    },
  });
  // Behind the socket plugin, which otherwise leaves a rejected upgrade's connection open.
  app.addHook('onRequest', async (request, reply) => {
    if (isOriginAllowed(request, config.allowedOrigins)) return;
    return rejectWith(reply, 'wrong-origin');
  });
}
