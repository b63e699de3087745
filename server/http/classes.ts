// The routes of a class: open, look in, join, lead, name an aim, and the teacher's three pages.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import {
  CLASSES_PATH,
  type ClassInfo,
  classActionSchema,
  classAimsSchema,
  drillFileParts,
  joinClassSchema,
  openClassSchema,
} from '../../shared-engine/index.ts';
import type { Answer } from '../aggregate/decision.ts';
import type { ActiveClass } from '../class/active-class.ts';
import { bigScreenFor } from '../class/big-screen.ts';
import type { Classes } from '../class/classes.ts';
import { dashboardFor } from '../class/dashboard.ts';
import { join } from '../class/joining.ts';
import { newerPage } from '../class/newer-page.ts';
import { dealOf } from '../class/player-results.ts';
import { reportFor } from '../class/report.ts';
import { type ClassPlayer, classTableTerms, mayBeTakenHome } from '../class/state.ts';
import { roundsHomeFor } from '../class/take-home.ts';
import { performAction } from '../class/teacher-actions.ts';
import type { Timing } from '../config.ts';
import { playingCard } from '../playing-card.ts';
import type { Clock, Entropy } from '../ports.ts';
import type { Registry } from '../registry/registry.ts';
import { parseName } from '../room/name.ts';
import { parseCode } from '../room-code.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import type { Cards, Drills } from '../work-ports.ts';
import { addressKey } from './address-key.ts';
import { cardFromRequest } from './card-from-request.ts';
import { anyPlayerOf, isScreen, isTeacher, playerOf, setClassCookie, setSeatCookie } from './cookies.ts';
import { createRateLimit } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';
import { hangUpSignal, senderOf } from './sender.ts';
import { taughtBy } from './teacher-keys.ts';

export interface ClassRoutes {
  readonly classes: Classes;
  readonly registry: Registry;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly drills: Drills;
  readonly cards: Cards;
  readonly roomsPerMinute: number;
  readonly timing: Pick<Timing, 'retention' | 'classRetention'>;
}

const DAY_MS = 24 * 60 * 60 * 1000;

export type AtClass = { Params: { code: string }; Querystring: { seen?: string } };

export function classRoutes(app: FastifyInstance, ports: ClassRoutes): void {
  const { classes, roomsPerMinute } = ports;
  teacherRoutes(app, ports);

  app.post(CLASSES_PATH, { config: createRateLimit(roomsPerMinute) }, (request, reply) =>
    openClass(request, reply, ports),
  );

  app.get<AtClass>(`${CLASSES_PATH}/:code`, async (request, reply) => {
    const live = await classAt(classes, request);
    return live ? infoFor(live, request, ports.timing) : rejectWith(reply, 'no-such-class');
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/players`, async (request, reply) => {
    const live = await classAt(classes, request);
    return live ? joinClass(live, request, reply, ports) : rejectWith(reply, 'no-such-class');
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/aims`, async (request, reply) => {
    const live = await classAt(classes, request);
    const player = live && playerOf(request, live.state);
    if (live === null || player === null) return rejectWith(reply, 'no-such-class');
    const aims = classAimsSchema.safeParse(request.body);
    if (!aims.success) return rejectWith(reply, 'bad-request');
    const deal = dealOf(live, player);
    return sendAnswer(reply, await live.submit({ kind: 'aim', player: player.id, deal, aims: aims.data }));
  });
}

function teacherRoutes(app: FastifyInstance, ports: ClassRoutes): void {
  const { classes, clock } = ports;
  const taught = taughtBy({ at: (request) => classAt(classes, request), missing: 'no-such-class' });

  app.post<AtClass>(`${CLASSES_PATH}/:code/actions`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    const action = classActionSchema.safeParse(request.body);
    if (!action.success) return rejectWith(reply, 'bad-request');
    const { registry } = ports;
    return sendAnswer(
      reply,
      await performAction(live, action.data, { registry, from: addressKey(request.ip) }),
    );
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code/dashboard`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    const { seen } = request.query;
    const dashboard = await newerPage({ live, clock, seen }, () => dashboardFor(live, clock.now()));
    // A key may have been taken back while its bearer waited.
    return isTeacher(request, live.state) ? dashboard : rejectWith(reply, 'not-the-teacher');
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code/big-screen`, async (request, reply) => {
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    const isFor = () => isTeacher(request, live.state) || isScreen(request, live.state);
    if (!isFor()) return rejectWith(reply, 'not-the-teacher');
    const shown = await newerPage({ live, clock, seen: request.query.seen }, () => bigScreenFor(live));
    return isFor() ? shown : rejectWith(reply, 'not-the-teacher');
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code/report`, async (request, reply) => {
    const live = await taught(request, reply);
    return live === null ? reply : reportFor(live);
  });
}

export async function classAt(
  classes: Classes,
  { params }: Pick<FastifyRequest<AtClass>, 'params'>,
): Promise<ActiveClass | null> {
  const code = parseCode(params.code);
  return code === null ? null : classes.find(code);
}

async function openClass(request: FastifyRequest, reply: FastifyReply, ports: ClassRoutes) {
  const signal = hangUpSignal(reply);
  const body = openClassSchema.safeParse(request.body);
  if (!body.success) return rejectWith(reply, 'bad-request');
  // A drill file that carries its card may be sent as it is.
  const file = drillFileParts(body.data.drill);
  const card = await cardFromRequest(request, body.data.card ?? file.card, ports.cards);
  if (card === null) return rejectWith(reply, 'busy');
  if (!card.ok) return rejectWith(reply, 'bad-card', card.problems);
  const drillRequest = { card: playingCard(card.choice), sender: senderOf(request), signal };
  const prepared = await ports.drills.prepare(file.drill, drillRequest);
  if (prepared === null || signal.aborted) return rejectWith(reply, 'busy');
  if (!prepared.ok)
    return rejectWith(
      reply,
      'bad-drill',
      prepared.problems.map(({ message }) => message),
    );
  const { drill, deals } = prepared;
  if (body.data.terms.takeHome && !mayBeTakenHome(drill)) return rejectWith(reply, 'tables-of-four');
  const secret = newSecret(ports.entropy);
  const opened = await ports.classes.open({
    kind: 'opened',
    drill,
    deals,
    terms: body.data.terms,
    card: card.choice,
    secretHash: hashSecret(secret),
  });
  if (!opened.ok) return sendRejection(reply, opened);
  const { code } = opened.live;
  setClassCookie(reply, code, 'teacher', secret);
  return reply.code(201).send({ code });
}

async function joinClass(
  live: ActiveClass,
  request: FastifyRequest,
  reply: FastifyReply,
  ports: ClassRoutes,
) {
  const body = joinClassSchema.safeParse(request.body);
  if (!body.success) return rejectWith(reply, 'bad-request');
  // A request that is sent twice must not make two players.
  const known = anyPlayerOf(request, live.state);
  if (known?.removed) return rejectWith(reply, 'removed');
  if (known) return placeAgain(known, reply, ports);
  const name = parseName(body.data.name);
  if (name === null) return rejectWith(reply, 'bad-name');
  const { entropy, registry } = ports;
  const [secret, seatSecret] = [newSecret(entropy), newSecret(entropy)];
  const hashes = { secretHash: hashSecret(secret), seatSecretHash: hashSecret(seatSecret) };
  const joined = await join(live, registry, { name, ...hashes, from: addressKey(request.ip) });
  if (!joined.ok) return sendRejection(reply, joined);
  setClassCookie(reply, live.code, 'player', secret);
  setSeatCookie(reply, joined.room, seatSecret);
  return reply.code(201).send({ room: joined.room, seat: joined.seat });
}

/** With a new secret for the seat: the teacher may have put the player to another table (rule CH7). */
async function placeAgain(
  { room, seat }: ClassPlayer,
  reply: FastifyReply,
  { entropy, registry }: ClassRoutes,
) {
  const live = await registry.find(room);
  const held = live?.room.state.seats[seat];
  if (live && held?.kind === 'person') {
    const secret = newSecret(entropy);
    const holder = { seat, since: held.since };
    const shown = held.secrets.current;
    const command = { kind: 'issue-secret', holder, shown, secretHash: hashSecret(secret) } as const;
    const issued = await live.room.submit(command);
    // The secrets given out before are still good.
    if (issued.ok) setSeatCookie(reply, room, secret);
  }
  return { room, seat };
}

function sendAnswer(reply: FastifyReply, answer: Answer) {
  return answer.ok ? { ok: true } : sendRejection(reply, answer);
}

function infoFor(live: ActiveClass, request: FastifyRequest, timing: ClassRoutes['timing']): ClassInfo {
  const { code, state } = live;
  const { drill, terms, dealt, joiningOpen, takeHome, ended } = state;
  const player = playerOf(request, state);
  return {
    code,
    title: drill.title,
    terms,
    tableTerms: classTableTerms(state),
    form: drill.form,
    deals: drill.deals.length,
    dealt,
    joiningOpen,
    takeHome,
    ended,
    keptDays: Math.round((terms.amongFriends ? timing.retention : timing.classRetention) / DAY_MS),
    teacher: isTeacher(request, state),
    screen: isScreen(request, state),
    player: player && playerInfoFor(live, player),
  };
}

function playerInfoFor(live: ActiveClass, player: ClassPlayer): ClassInfo['player'] {
  const { room, seat } = player;
  return { room, seat, deal: dealInfoFor(live, player), home: roundsHomeFor(live, player) };
}

/** What a player may know of the deal on the own table, besides its tiles; null before the first. */
function dealInfoFor(live: ActiveClass, player: ClassPlayer): NonNullable<ClassInfo['player']>['deal'] {
  const place = dealOf(live, player);
  const { deals } = live.state.drill;
  const deal = place < player.first ? undefined : deals[place];
  if (deal === undefined) return null;
  const { title = null, task = null, scripted } = deal;
  return { number: place + 1, of: deals.length, title, task, scripted: scripted !== undefined };
}
