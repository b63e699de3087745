// The routes of a published drill: publish, open, send a round, compare, and the pages of its teacher.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import {
  DRILLS_PATH,
  drillFileParts,
  isQuestion,
  type PublishDrill,
  publishDrillSchema,
  publishedActionSchema,
  sendRoundSchema,
  usesRollouts,
} from '../../shared-engine/index.ts';
import type { Answer } from '../aggregate/decision.ts';
import type { Timing } from '../config.ts';
import { playingCard } from '../playing-card.ts';
import type { Clock, Entropy, Store } from '../ports.ts';
import type { ActiveDrill } from '../published/active-drill.ts';
import { isLastDay } from '../published/decide.ts';
import { dashboardFor, drillInfoFor, type PageOptions } from '../published/pages.ts';
import { deviceData, forgetDevice } from '../published/personal-data.ts';
import type { PublishedDrills } from '../published/published-drills.ts';
import { drillReport, releasedDeal } from '../published/report.ts';
import { playerOf, roundsOf } from '../published/state.ts';
import { parseName } from '../room/name.ts';
import type { PersonalDataEntry } from '../room/personal-data.ts';
import { parseCode } from '../room-code.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import type { Cards, Drills } from '../work-ports.ts';
import { cardFromRequest } from './card-from-request.ts';
import { badgeOf, clearDrillCookies, deviceHash, isTeacher, setDrillCookie } from './cookies.ts';
import { createRateLimit, createTries } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';
import { hangUpSignal, senderOf } from './sender.ts';
import { taughtBy, teacherKeyRoutes } from './teacher-keys.ts';

export interface PublishedRoutes {
  readonly published: PublishedDrills;
  readonly store: Pick<Store, 'history' | 'rewrite'>;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly drills: Drills;
  readonly cards: Cards;
  readonly roomsPerMinute: number;
  /** Under which phones reach this server; null where nobody has said. */
  readonly publicAddress: string | null;
  readonly timing: Pick<Timing, 'classRetention'>;
}

type AtDrill = { Params: { code: string } };

/** How often one address sends a round in a minute: sixty people behind one send four each. */
const ROUNDS_SENT = 240;

const PATH = `${DRILLS_PATH}/:code`;

export function publishedRoutes(app: FastifyInstance, ports: PublishedRoutes): void {
  const { published, roomsPerMinute, clock, entropy } = ports;
  teacherRoutes(app, ports);
  personalDataRoutes(app, ports);
  const isExceeded = createTries(app, ROUNDS_SENT);

  app.post(DRILLS_PATH, { config: createRateLimit(roomsPerMinute) }, (request, reply) =>
    publish(request, reply, ports),
  );

  app.get<AtDrill>(PATH, async (request, reply) => {
    const live = await drillAt(published, request);
    if (live === null) return rejectWith(reply, 'no-such-drill');
    // Nothing is stored of a device before a round of it is counted.
    const known = deviceHash(request);
    if (known === null) setDrillCookie(reply, live.code, 'player', newSecret(entropy));
    const badge = badgeOf(request, live.state);
    if (badge !== null) setDrillCookie(reply, live.code, 'teacher', badge);
    const options: PageOptions = {
      now: clock.now(),
      keptMs: ports.timing.classRetention,
      isTeacher: isTeacher(request, live.state),
    };
    return drillInfoFor(live, known === null ? null : playerOf(known), options);
  });

  app.post<AtDrill>(`${PATH}/rounds`, async (request, reply) => {
    if (await isExceeded(request)) return rejectWith(reply, 'too-fast');
    const live = await drillAt(published, request);
    return live === null ? rejectWith(reply, 'no-such-drill') : sendRound(live, request, reply);
  });

  app.get<AtDrill>(`${PATH}/released`, async (request, reply) => {
    const live = await drillAt(published, request);
    if (live === null) return rejectWith(reply, 'no-such-drill');
    const hash = deviceHash(request);
    const { state } = live;
    const rounds = hash === null ? {} : roundsOf(state, playerOf(hash));
    const places = [...state.deals.keys()].filter(
      (place) => state.terms.compare === 'at-once' || rounds[place] !== undefined,
    );
    return { deals: places.map((place) => releasedDeal(state, place)) };
  });
}

async function drillAt(
  published: PublishedDrills,
  { params }: Pick<FastifyRequest<AtDrill>, 'params'>,
): Promise<ActiveDrill | null> {
  const code = parseCode(params.code);
  return code === null ? null : published.find(code);
}

async function publish(request: FastifyRequest, reply: FastifyReply, ports: PublishedRoutes) {
  const signal = hangUpSignal(reply);
  const body = publishDrillSchema.safeParse(request.body);
  if (!body.success) return rejectWith(reply, 'bad-request');
  const { terms, until }: PublishDrill = body.data;
  const now = ports.clock.now();
  if (!isLastDay(until, now) || !isStoredThen(until, now, ports)) return rejectWith(reply, 'bad-last-day');
  const file = drillFileParts(body.data.drill);
  const card = await cardFromRequest(request, body.data.card ?? file.card, ports.cards);
  if (card === null) return rejectWith(reply, 'busy');
  if (!card.ok) return rejectWith(reply, 'bad-card', card.problems);
  const drillRequest = { card: playingCard(card.choice), sender: senderOf(request), signal };
  const prepared = await ports.drills.prepare(file.drill, drillRequest);
  if (prepared === null || signal.aborted) return rejectWith(reply, 'busy');
  if (!prepared.ok) {
    const problems = prepared.problems.map(({ message }) => message);
    return rejectWith(reply, 'bad-drill', problems);
  }
  const { drill, deals } = prepared;
  if (drill.bots.styles.some(usesRollouts)) return rejectWith(reply, 'bots-too-slow');
  const secret = newSecret(ports.entropy);
  const made = await ports.published.publish({
    kind: 'published',
    drill,
    deals,
    terms,
    until,
    card: card.choice,
    secretHash: hashSecret(secret),
  });
  if (!made.ok) return sendRejection(reply, made);
  setDrillCookie(reply, made.live.code, 'teacher', secret);
  return reply.code(201).send({ code: made.live.code });
}

/** Whether a drill is still there on its last day, also where nobody plays it. */
function isStoredThen(until: number, now: number, { timing }: Pick<PublishedRoutes, 'timing'>): boolean {
  return until <= now + timing.classRetention;
}

async function sendRound(live: ActiveDrill, request: FastifyRequest, reply: FastifyReply) {
  const body = sendRoundSchema.safeParse(request.body);
  const hash = deviceHash(request);
  if (!body.success || hash === null) return rejectWith(reply, 'bad-request');
  const { id, choices, questions, deal: dealId } = body.data;
  if (!questions.every(({ text }) => isQuestion(text))) return rejectWith(reply, 'bad-question');
  const name = live.state.terms.names ? parseName(body.data.name ?? '') : null;
  if (live.state.terms.names && name === null) return rejectWith(reply, 'bad-name');
  const deal = live.state.drill.deals.findIndex((one) => one.id === dealId);
  if (deal < 0) return rejectWith(reply, 'round-not-played');
  const player = playerOf(hash);
  const sender = senderOf(request);
  const answer = await live.count({ player, id, deal, choices, questions, name, sender });
  if (!answer.ok) return sendRejection(reply, answer);
  const counted = roundsOf(live.state, player)[deal] === id;
  return {
    counted,
    asked: questions.length === 0 || (counted && !live.state.unasked.includes(id)),
    released: releasedDeal(live.state, deal),
  };
}

function teacherRoutes(app: FastifyInstance, ports: PublishedRoutes): void {
  const { published, clock, entropy, timing, publicAddress } = ports;
  const missing = 'no-such-drill';
  const at = (request: Pick<FastifyRequest<AtDrill>, 'params'>) => drillAt(published, request);
  const taught = taughtBy({ at, missing });
  teacherKeyRoutes(app, {
    path: PATH,
    entropy,
    missing,
    at,
    setCookie: (reply, code, secret) => setDrillCookie(reply, code, 'teacher', secret),
  });

  app.get<AtDrill>(`${PATH}/dashboard`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    return dashboardFor(live, { now: clock.now(), keptMs: timing.classRetention }, publicAddress);
  });

  app.get<AtDrill>(`${PATH}/report`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    live.analyses.ask();
    return drillReport(live, clock.now());
  });

  app.post<AtDrill>(`${PATH}/actions`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    const action = publishedActionSchema.safeParse(request.body);
    if (!action.success) return rejectWith(reply, 'bad-request');
    const { data } = action;
    if (data.kind === 'extend' && !isStoredThen(data.until, clock.now(), ports))
      return rejectWith(reply, 'bad-last-day');
    return sendAnswer(reply, await live.submit(data));
  });
}

function personalDataRoutes(app: FastifyInstance, { published, store }: PublishedRoutes): void {
  app.get<AtDrill>(`${PATH}/personal-data`, async (request, reply) => {
    const live = await drillAt(published, request);
    if (live === null) return rejectWith(reply, 'no-such-drill');
    reply.header('content-disposition', 'attachment; filename="quadrille-personal-data.json"');
    const hash = deviceHash(request);
    const taught = isTeacher(request, live.state) ? await teacherData(store, live) : [];
    // Somebody may have played before they were given a teacher's key.
    const own = hash === null ? [] : await deviceData(store, live, playerOf(hash));
    return { code: live.code, entries: [...taught, ...own] };
  });

  app.delete<AtDrill>(`${PATH}/personal-data`, async (request, reply) => {
    const live = await drillAt(published, request);
    if (live === null) return rejectWith(reply, 'no-such-drill');
    if (!isTeacher(request, live.state)) return forgetAsker(live, request, reply);
    await published.remove(live);
    clearDrillCookies(reply, live.code);
    return reply.code(204).send();
  });

  app.delete<AtDrill>(`${PATH}/personal-data/device`, async (request, reply) => {
    const live = await drillAt(published, request);
    return live === null ? rejectWith(reply, 'no-such-drill') : forgetAsker(live, request, reply);
  });

  /** A teacher stays one. */
  async function forgetAsker(live: ActiveDrill, request: FastifyRequest, reply: FastifyReply) {
    const hash = deviceHash(request);
    const forgotten = hash === null ? null : await forgetDevice(store, live, playerOf(hash));
    if (forgotten !== null && !forgotten.ok) return sendRejection(reply, forgotten);
    clearDrillCookies(reply, live.code, ['player']);
    return reply.code(204).send();
  }
}

/** The drill belongs to its teacher, and goes with it. */
async function teacherData(
  store: Pick<Store, 'history'>,
  { code, state }: ActiveDrill,
): Promise<PersonalDataEntry[]> {
  const [first] = (await store.history(code))?.rows ?? [];
  const { drill, terms } = state;
  return first ? [{ at: first.at, what: 'published the drill', drill, terms }] : [];
}

function sendAnswer(reply: FastifyReply, answer: Answer) {
  return answer.ok ? { ok: true } : sendRejection(reply, answer);
}
