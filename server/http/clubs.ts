// The routes of a club's page: make it, read it, change it, and put a table on it.
import type { FastifyInstance, FastifyRequest } from 'fastify';
import {
  CLUB_LIMITS,
  CLUBS_PATH,
  type ClubAction,
  clubActionSchema,
  isClubName,
  listTableSchema,
  makeClubSchema,
  ROOMS_PATH,
} from '../../shared-engine/index.ts';
import { type Answer, reject } from '../aggregate/decision.ts';
import type { ActiveClub, Clubs } from '../club/clubs.ts';
import { type ClubPagePorts, clubPageFor, unjoinableOn } from '../club/page.ts';
import type { Entropy } from '../ports.ts';
import { parseCode } from '../room-code.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import { badgeOf, bearerOf, clearClubCookie, isTeacher, setClubCookie } from './cookies.ts';
import { createRateLimit, createTries } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';
import { taughtBy, teacherKeyRoutes } from './teacher-keys.ts';

export interface ClubRoutes extends ClubPagePorts {
  readonly clubs: Clubs;
  readonly entropy: Entropy;
  readonly roomsPerMinute: number;
}

type AtCode = { Params: { code: string } };

const PATH = `${CLUBS_PATH}/:code`;

/** How often one address reads pages in a minute: sixty people behind one look four times each. */
const PAGES_READ = 240;

/**
 * How often tables are put on pages from one address in an hour: those of a whole club in one room. A page takes more
 * in an hour (`LISTINGS`), so that nobody uses up what the others have.
 */
export const LISTED_FROM_ADDRESS = 40;

export function clubRoutes(app: FastifyInstance, ports: ClubRoutes): void {
  const { clubs, entropy, roomsPerMinute } = ports;
  const isExceeded = createTries(app, PAGES_READ);
  const isListedOften = createTries(app, LISTED_FROM_ADDRESS, '1 hour');
  teacherRoutes(app, ports);

  app.post(CLUBS_PATH, { config: createRateLimit(roomsPerMinute, () => true) }, async (request, reply) => {
    const body = makeClubSchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    if (!isClubName(body.data.name)) return rejectWith(reply, 'bad-club-name');
    const secret = newSecret(entropy);
    const made = await clubs.make({ name: body.data.name.trim(), secretHash: hashSecret(secret) });
    if (!made.ok) return sendRejection(reply, made);
    setClubCookie(reply, made.live.code, secret);
    return reply.code(201).send({ code: made.live.code });
  });

  app.get<AtCode>(PATH, async (request, reply) => {
    if (await isExceeded(request)) return rejectWith(reply, 'too-fast');
    const live = await clubAt(clubs, request.params.code);
    if (live === null) return rejectWith(reply, 'no-such-club');
    // The page lives on for as long as tables come and go, and so does its teacher's cookie.
    const badge = badgeOf(request, live.state);
    if (badge !== null) setClubCookie(reply, live.code, badge);
    return clubPageFor(live, ports, isTeacher(request, live.state));
  });

  app.post<AtCode>(`${ROOMS_PATH}/:code/club`, async (request, reply) => {
    const code = parseCode(request.params.code);
    const table = code === null ? null : await ports.registry.find(code);
    if (!table?.policy.isOpen) return rejectWith(reply, 'no-such-room');
    const body = listTableSchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    const { state } = table.room;
    const bearer = bearerOf(request, state);
    if (bearer === null) return rejectWith(reply, 'not-seated');
    if (state.host !== bearer.holder.seat) return rejectWith(reply, 'not-the-host');
    if (state.mode !== 'friends') return rejectWith(reply, 'not-for-clubs');
    const live = await clubAt(clubs, body.data.club);
    if (live === null) return rejectWith(reply, 'no-such-club');
    if (body.data.on && (await isListedOften(request))) return rejectWith(reply, 'listed-often');
    const { code: listed } = table.room;
    const answer = body.data.on ? await list(live, listed, ports) : await takeOff(live, listed);
    return answer.ok ? { ok: true } : sendRejection(reply, answer);
  });
}

function clubAt(clubs: Clubs, text: string): Promise<ActiveClub | null> {
  const code = parseCode(text);
  return code === null ? Promise.resolve(null) : clubs.find(code);
}

/** A table that nobody can join makes room; the page is looked through only where it has none. */
async function list(live: ActiveClub, table: string, ports: ClubRoutes): Promise<Answer> {
  const { tables } = live.state;
  const isShort = tables.length >= CLUB_LIMITS.tables && !tables.includes(table);
  const unjoinable = isShort ? await unjoinableOn(live, ports) : [];
  return live.submit({ kind: 'list', table, unjoinable });
}

function takeOff(live: ActiveClub, table: string): Promise<Answer> {
  return live.submit({ kind: 'take-off', tables: [table] });
}

function teacherRoutes(app: FastifyInstance, ports: ClubRoutes): void {
  const { clubs, entropy } = ports;
  const missing = 'no-such-club';
  const at = ({ params }: Pick<FastifyRequest<AtCode>, 'params'>) => clubAt(clubs, params.code);
  const taught = taughtBy({ at, missing });
  teacherKeyRoutes(app, { path: PATH, entropy, missing, at, setCookie: setClubCookie });

  app.post<AtCode>(`${PATH}/actions`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    const action = clubActionSchema.safeParse(request.body);
    if (!action.success) return rejectWith(reply, 'bad-request');
    const answer = await perform(live, action.data, ports);
    return answer.ok ? { ok: true } : sendRejection(reply, answer);
  });

  app.delete<AtCode>(PATH, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    await clubs.remove(live);
    clearClubCookie(reply, live.code);
    return reply.code(204).send();
  });
}

async function perform(
  live: ActiveClub,
  action: ClubAction,
  { published }: Pick<ClubRoutes, 'published'>,
): Promise<Answer> {
  switch (action.kind) {
    case 'rename': {
      const name = action.name.trim();
      return isClubName(name) ? live.submit({ kind: 'rename', name }) : reject('bad-club-name');
    }
    case 'show-drill': {
      if (action.code === null) return live.submit({ kind: 'show-drill', code: null });
      const code = parseCode(action.code);
      const drill = code === null ? null : await published.find(code);
      return drill ? live.submit({ kind: 'show-drill', code: drill.code }) : reject('no-such-drill');
    }
    case 'take-off':
      return live.submit({ kind: 'keep-off', table: action.table });
    case 'let-back':
    case 'revoke-key':
      return live.submit(action);
  }
}
