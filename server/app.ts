// The HTTP server with everything it answers, put together from ports; it does not listen by itself.
import fastifyCookie from '@fastify/cookie';
import fastifyHelmet from '@fastify/helmet';
import fastifyRateLimit from '@fastify/rate-limit';
import fastifyWebsocket from '@fastify/websocket';
import Fastify, { type FastifyBaseLogger, type FastifyInstance, LogController } from 'fastify';
import type { Logger } from 'pino';
import { HOUSE_CARD, HOUSE_CARD_PATH, MAX_FRAME_BYTES } from '../shared-engine/index.ts';
import { Classes } from './class/classes.ts';
import { sharedJudges } from './class/shared-judges.ts';
import { sharedReviewer } from './class/shared-reviews.ts';
import type { Config } from './config.ts';
import { classMineRoutes } from './http/class-mine.ts';
import { classRoutes } from './http/classes.ts';
import type { Figures } from './http/figures.ts';
import { mineRoutes } from './http/mine.ts';
import { originAllowed } from './http/origin.ts';
import { pages } from './http/pages.ts';
import { headerPolicy } from './http/policy.ts';
import { refusalBody, refuseWith } from './http/refusals.ts';
import { roomRoutes } from './http/rooms.ts';
import { errorFacts } from './log.ts';
import type {
  Bots,
  Clock,
  Drills,
  Entropy,
  Judges,
  Nodes,
  Reviewer,
  Store,
  Tickets,
  WakeBus,
} from './ports.ts';
import { Registry } from './room/registry.ts';
import { drillsInProcess } from './work/drills.ts';
import { sturdyBots } from './work/sturdy-bots.ts';
import { Gateway } from './ws/gateway.ts';

/** Largest body of a request in bytes: room for a card file. */
const BODY_LIMIT = 512 * 1024;

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
  /** Made ready in this process where it is missing. */
  readonly drills?: Drills;
  /** First answers alone where it is missing. */
  readonly judges?: Judges;
  /** Counts for the operator where they are asked for. */
  readonly figures?: Figures;
  /** Folder of the built page. */
  readonly clientFolder: string;
}

/** Closing the instance ends all sockets with `restarting` and waits until what was begun is kept. */
export async function buildApp(ports: AppPorts): Promise<FastifyInstance> {
  const { config, log, clock, entropy, tickets } = ports;
  const { limits, pace, origins, proxyHops } = config;
  const logger: FastifyBaseLogger = log;
  const app = Fastify({
    loggerInstance: logger,
    // The address of a request holds a room's code; what may be logged is logged below.
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: (_, hop) => hop < proxyHops,
    bodyLimit: BODY_LIMIT,
    forceCloseConnections: true,
  });
  const reviewer = sharedReviewer(ports.reviewer);
  const judges = ports.judges && sharedJudges(ports.judges);
  const registry = new Registry({
    ...ports,
    inClass: { reviewer, ...(judges && { judges }) },
    bots: sturdyBots(ports.bots, clock, log),
    pace,
    limits,
  });
  const classes = new Classes({ ...ports, registry, limits, pace });
  const sockets = new Gateway({
    registry,
    tickets,
    clock,
    log,
    mostSockets: limits.sockets,
    mostAnAddress: limits.socketsPerAddress,
    perSecond: limits.messagesPerSecond,
  });

  const figures = ports.figures;
  figures?.observe({ rooms: () => registry.inHand, sockets: () => sockets.sockets });
  app.addHook('onResponse', async ({ method, routeOptions }, reply) => {
    const ms = Math.round(reply.elapsedTime);
    figures?.answered(method, routeOptions.url ?? 'unknown', reply.statusCode, ms);
    log.info({ method, route: routeOptions.url ?? 'unknown', status: reply.statusCode, ms }, 'request');
  });
  await app.register(fastifyHelmet, headerPolicy);
  await app.register(fastifyCookie);
  await app.register(fastifyRateLimit, {
    global: limits.requestsPerMinute > 0,
    max: limits.requestsPerMinute,
    timeWindow: '1 minute',
    keyGenerator: (request) => request.ip ?? 'unknown',
    errorResponseBuilder: () => Object.assign(new Error('too fast'), { statusCode: 429 }),
  });
  await app.register(fastifyWebsocket, {
    options: {
      maxPayload: MAX_FRAME_BYTES,
      perMessageDeflate: false,
      // Broken UTF-8 gets a refusal in words instead of a cut line; the frame is checked when it is read.
      skipUTF8Validation: true,
    },
    // The socket closes itself with the code that fits; here it only has to be known.
    errorHandler(error, socket) {
      log.info(errorFacts(error), 'a socket failed');
      socket.close();
    },
    preClose(done) {
      classes
        .close()
        .then(() => registry.close())
        .then(() => sockets.restart(entropy))
        .then(() => done(), done);
    },
  });

  // Behind the socket plugin, which otherwise leaves a refused upgrade's connection open.
  app.addHook('onRequest', async (request, reply) => {
    if (originAllowed(request, origins)) return;
    return refuseWith(reply, 'wrong-origin');
  });

  app.get('/healthz', { config: { rateLimit: false } }, async () => ({ ok: true }));
  app.get(HOUSE_CARD_PATH, async () => HOUSE_CARD);
  roomRoutes(app, { registry, tickets, entropy, roomsPerMinute: limits.roomsPerMinute });
  mineRoutes(app, { registry, store: ports.store });
  classRoutes(app, {
    classes,
    registry,
    clock,
    entropy,
    reviewer,
    judges,
    drills: ports.drills ?? drillsInProcess,
    roomsPerMinute: limits.roomsPerMinute,
  });
  classMineRoutes(app, { classes, store: ports.store });
  sockets.open(app);
  await pages(app, ports.clientFolder);

  app.setNotFoundHandler((_, reply) => reply.code(404).send(refusalBody('bad-request')));
  app.setErrorHandler((error, _, reply) => {
    const status = statusOf(error);
    if (status === 429) return refuseWith(reply, 'too-fast');
    if (status < 500) return reply.code(status).send(refusalBody('bad-request'));
    log.error(errorFacts(error), 'a request failed');
    return refuseWith(reply, 'try-later');
  });
  return app;
}

function statusOf(error: unknown): number {
  const known = error instanceof Error && 'statusCode' in error ? error.statusCode : undefined;
  return typeof known === 'number' ? known : 500;
}
