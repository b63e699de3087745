// The routes of a class: open, look in, join, lead, name an aim, and the teacher's three pages.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import {
  CLASSES_PATH,
  type ClassAct,
  type ClassInfo,
  classActSchema,
  classAimsSchema,
  joinClassSchema,
  openClassSchema,
} from '../../shared-engine/index.ts';
import type { Classes } from '../class/classes.ts';
import { deskFor } from '../class/desk.ts';
import { dealOf } from '../class/entries.ts';
import { join } from '../class/joining.ts';
import { goOn } from '../class/line.ts';
import type { LiveClass } from '../class/live-class.ts';
import { reportFor } from '../class/report.ts';
import type { Pupil } from '../class/state.ts';
import { type WallPorts, wallFor } from '../class/wall.ts';
import type { Clock, Drills, Entropy } from '../ports.ts';
import type { Answer } from '../room/answers.ts';
import { parseCode } from '../room/code.ts';
import { parseName } from '../room/name.ts';
import type { Registry } from '../room/registry.ts';
import { keyOf, newSecret } from '../secrets.ts';
import { playingCard } from '../work/cards.ts';
import { chosenCard } from './chosen-card.ts';
import { giveClassSecret, isTeacher, pupilOf } from './class-cookie.ts';
import { openingLimit } from './opening-limit.ts';
import { passOn, refuseWith } from './refusals.ts';
import { giveSecret } from './seat-cookie.ts';

/** How long a question for news is left open, in milliseconds: shorter than what proxies allow. */
const NEWS_MS = 20_000;

export interface ClassRoutes extends WallPorts {
  readonly classes: Classes;
  readonly registry: Registry;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly drills: Drills;
  readonly roomsPerMinute: number;
}

type AtClass = { Params: { code: string }; Querystring: { seen?: string } };

export function classRoutes(app: FastifyInstance, ports: ClassRoutes): void {
  const { classes, registry, clock, entropy, drills, roomsPerMinute } = ports;
  const opening = openingLimit(roomsPerMinute);

  app.post(CLASSES_PATH, { config: opening }, async (request, reply) => {
    const body = openClassSchema.safeParse(request.body);
    if (!body.success) return refuseWith(reply, 'bad-request');
    const card = chosenCard(body.data.card);
    if (!card.ok) return refuseWith(reply, 'bad-card', card.problems);
    const prepared = await drills.prepare(body.data.drill, playingCard(card.choice));
    if (prepared === null) return refuseWith(reply, 'try-later');
    if (!prepared.ok) return refuseWith(reply, 'bad-drill', sentencesOf(prepared.problems));
    const secret = newSecret(entropy);
    const { terms } = body.data;
    const { drill, deals } = prepared;
    const opened = await classes.open({
      kind: 'opened',
      drill,
      deals,
      terms,
      card: card.choice,
      key: keyOf(secret),
    });
    if (!opened.ok) return passOn(reply, opened);
    const { code } = opened.live;
    giveClassSecret(reply, code, 'teacher', secret);
    return reply.code(201).send({ code });
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code`, async (request, reply) => {
    const live = await classAt(request.params.code);
    return live ? infoFor(live, request) : refuseWith(reply, 'no-such-class');
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/pupils`, async (request, reply) => {
    const live = await classAt(request.params.code);
    if (live === null) return refuseWith(reply, 'no-such-class');
    const body = joinClassSchema.safeParse(request.body);
    if (!body.success) return refuseWith(reply, 'bad-request');
    // A request that is sent twice must not make two pupils.
    const known = pupilOf(request, live.state);
    if (known) return { room: known.room, seat: known.seat };
    const name = parseName(body.data.name);
    if (name === null) return refuseWith(reply, 'bad-name');
    const [secret, seatSecret] = [newSecret(entropy), newSecret(entropy)];
    const joined = await join(live, registry, { name, key: keyOf(secret), seatKey: keyOf(seatSecret) });
    if (!joined.ok) return passOn(reply, joined);
    giveClassSecret(reply, live.code, 'pupil', secret);
    giveSecret(reply, joined.room, seatSecret);
    return reply.code(201).send({ room: joined.room, seat: joined.seat });
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/aims`, async (request, reply) => {
    const live = await classAt(request.params.code);
    const pupil = live && pupilOf(request, live.state);
    if (live === null || pupil === null) return refuseWith(reply, 'no-such-class');
    const aims = classAimsSchema.safeParse(request.body);
    if (!aims.success) return refuseWith(reply, 'bad-request');
    return done(
      reply,
      await live.submit({ kind: 'aim', pupil: pupil.id, deal: dealOf(live, pupil), aims: aims.data }),
    );
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/acts`, async (request, reply) => {
    const live = await taughtBy(request, reply);
    if (live === null) return reply;
    const act = classActSchema.safeParse(request.body);
    if (!act.success) return refuseWith(reply, 'bad-request');
    return done(reply, await perform(live, act.data));
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code/desk`, async (request, reply) => {
    const live = await taughtBy(request, reply);
    if (live === null) return reply;
    await news(live, request.query.seen);
    return deskFor(live, clock.now());
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code/wall`, async (request, reply) => {
    const live = await taughtBy(request, reply);
    if (live === null) return reply;
    await news(live, request.query.seen);
    return wallFor(live, ports);
  });

  app.get<AtClass>(`${CLASSES_PATH}/:code/report`, async (request, reply) => {
    const live = await taughtBy(request, reply);
    return live === null ? reply : reportFor(live, ports);
  });

  async function classAt(text: string): Promise<LiveClass | null> {
    const code = parseCode(text);
    return code === null ? null : classes.find(code);
  }

  /** The class, for its teacher; anybody else has been refused when this answers null. */
  async function taughtBy(request: FastifyRequest<AtClass>, reply: FastifyReply): Promise<LiveClass | null> {
    const live = await classAt(request.params.code);
    if (live !== null && isTeacher(request, live.state)) return live;
    refuseWith(reply, live === null ? 'no-such-class' : 'not-the-teacher');
    return null;
  }

  /** Waits while the asker has seen everything, or until it is time to ask again. */
  async function news(live: LiveClass, seen: string | undefined): Promise<void> {
    if (seen === String(live.version)) await live.untilChange(NEWS_MS);
  }
}

function perform(live: LiveClass, act: ClassAct): Promise<Answer> {
  switch (act.kind) {
    case 'more-time':
      return live.giveTime(act.pupil, act.seconds);
    case 'go-on':
      return goOn(live, act.place, act.choice);
    default:
      return live.submit(act);
  }
}

function done(reply: FastifyReply, answer: Answer) {
  return answer.ok ? { ok: true } : passOn(reply, answer);
}

function infoFor(live: LiveClass, request: FastifyRequest): ClassInfo {
  const { code, state } = live;
  const { drill, terms, dealt, ended } = state;
  const pupil = pupilOf(request, state);
  return {
    code,
    title: drill.title,
    terms,
    form: drill.form,
    deals: drill.deals.length,
    dealt,
    ended,
    teacher: isTeacher(request, state),
    pupil: pupil && { room: pupil.room, seat: pupil.seat, deal: dealFor(live, pupil) },
  };
}

function sentencesOf(problems: readonly { readonly sentence: string }[]): string[] {
  return problems.map(({ sentence }) => sentence);
}

/** What a pupil may know of the deal on the own table, besides its tiles; null before the first. */
function dealFor(live: LiveClass, pupil: Pupil): NonNullable<ClassInfo['pupil']>['deal'] {
  const place = dealOf(live, pupil);
  const { deals } = live.state.drill;
  const deal = place < pupil.first ? undefined : deals[place];
  if (deal === undefined) return null;
  return { number: place + 1, of: deals.length, title: deal.title ?? null, task: deal.task ?? null };
}
