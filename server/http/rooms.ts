// The routes of a room: open, look in, take a seat, get a ticket, read its card.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import {
  type ClaimSeat,
  claimSeatSchema,
  type lobbySchema,
  openRoomSchema,
  ROOMS_PATH,
  termsFrom,
} from '../../shared-engine/index.ts';
import { seatInfos } from '../delivery/audience.ts';
import type { Clock, Entropy, Tickets } from '../ports.ts';
import type { ActiveRoom } from '../registry/active-room.ts';
import type { Registry } from '../registry/registry.ts';
import { parseName } from '../room/name.ts';
import { OVERTAKEN_MS, retiredSecret } from '../room/seat-secrets.ts';
import { holderAt, seatWithSecret } from '../room/state.ts';
import { parseCode } from '../room-code.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import type { Cards } from '../work-ports.ts';
import { addressKey } from './address-key.ts';
import { cardFromRequest } from './card-from-request.ts';
import {
  type Bearer,
  bearerHash,
  bearerOf,
  clearSeatCookie,
  isProgram,
  oldBearerOf,
  setSeatCookie,
} from './cookies.ts';
import { createRateLimit } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';

export interface RoomRoutes {
  readonly registry: Registry;
  readonly tickets: Tickets;
  readonly entropy: Entropy;
  readonly clock: Clock;
  readonly cards: Cards;
  /** Rooms one address may open a minute; 0 for no limit. */
  readonly roomsPerMinute: number;
}

type AtRoom = { Params: { code: string } };

export function roomRoutes(app: FastifyInstance, ports: RoomRoutes): void {
  const { registry, tickets, entropy, clock, roomsPerMinute } = ports;

  app.post(ROOMS_PATH, { config: createRateLimit(roomsPerMinute) }, (request, reply) =>
    openRoom(request, reply, ports),
  );

  app.get<AtRoom>(`${ROOMS_PATH}/:code`, async (request, reply) => {
    const live = await roomAt(request);
    return live ? lobbyOf(live) : rejectWith(reply, 'no-such-room');
  });

  app.post<AtRoom>(`${ROOMS_PATH}/:code/seats`, async (request, reply) => {
    const live = await roomAt(request);
    if (live === null) return rejectWith(reply, 'no-such-room');
    const body = claimSeatSchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    // Who sits already keeps the seat: a claim sent twice must not take two.
    const known = bearerOf(request, live.room.state);
    if (known) return { seat: known.holder.seat };
    if (!mayHaveSecret(request, body.data)) return rejectWith(reply, 'cookie-only');
    const name = parseName(body.data.name);
    if (name === null) return rejectWith(reply, 'bad-name');
    return claimSeat(live, { ...body.data, name }, entropy, reply);
  });

  app.post<AtRoom>(`${ROOMS_PATH}/:code/ticket`, async (request, reply) => {
    const live = await findRoom(request);
    if (live === null) return rejectWith(reply, 'no-such-room');
    const { code, state } = live.room;
    const bearer = bearerOf(request, state);
    const old = bearer === null ? oldBearerOf(request, state) : null;
    if (old !== null) return rejectOldSecret(live, old, clock.now(), reply);
    if (bearer === null && !live.policy.isOpen) return rejectWith(reply, 'no-such-room');
    if (bearer === null && !live.broadcaster.hasRoomForSpectators) return rejectWith(reply, 'table-full');
    const secret = newSecret(entropy);
    if (bearer !== null) {
      const answer = await issueSecret(live, bearer, secret, reply);
      if (!answer.ok) return sendRejection(reply, answer);
    }
    const { holder, shown } = bearer ?? { holder: null, shown: null };
    const ticket = await tickets.issue({ code, holder, shown });
    const isKept = bearer !== null && isProgram(request) && bearerHash(request) === shown;
    return { ticket, seat: holder?.seat ?? null, ...(isKept && { secret }) };
  });

  app.get<AtRoom>(`${ROOMS_PATH}/:code/card`, async (request, reply) => {
    const live = await roomAt(request);
    return live ? live.card.file : rejectWith(reply, 'no-such-room');
  });

  /** A table that is not open to whoever has the code is there for those who sit at it. */
  async function roomAt(request: FastifyRequest<AtRoom>): Promise<ActiveRoom | null> {
    const live = await findRoom(request);
    if (live === null || live.policy.isOpen) return live;
    return bearerOf(request, live.room.state) === null ? null : live;
  }

  async function findRoom({ params }: FastifyRequest<AtRoom>): Promise<ActiveRoom | null> {
    const code = parseCode(params.code);
    return code === null ? null : registry.find(code);
  }
}

async function openRoom(
  request: FastifyRequest,
  reply: FastifyReply,
  { registry, entropy, cards }: RoomRoutes,
) {
  const body = openRoomSchema.safeParse(request.body);
  if (!body.success) return rejectWith(reply, 'bad-request');
  if (!mayHaveSecret(request, body.data)) return rejectWith(reply, 'cookie-only');
  const { mode, bots } = body.data;
  const agreed = termsFrom(body.data.terms, mode);
  if (!agreed.ok) return sendRejection(reply, agreed);
  const name = parseName(body.data.name);
  if (name === null) return rejectWith(reply, 'bad-name');
  const card = await cardFromRequest(request, body.data.card, cards);
  if (card === null) return rejectWith(reply, 'busy');
  if (!card.ok) return rejectWith(reply, 'bad-card', card.problems);
  const secret = newSecret(entropy);
  const host = { name, secretHash: hashSecret(secret), bots };
  const opened = await registry.open(
    { mode, terms: agreed.terms, card: card.choice, classCode: null, host },
    addressKey(request.ip),
  );
  if (!opened.ok) return sendRejection(reply, opened);
  const { code } = opened.live.room;
  const answer = giveSecret(reply, code, secret, body.data);
  return reply.code(201).send({ code, seat: 0, ...answer });
}

/** A page never gets to read the secret of its seat. */
function mayHaveSecret(request: FastifyRequest, { secretIn }: Pick<ClaimSeat, 'secretIn'>): boolean {
  return secretIn !== 'body' || isProgram(request);
}

/** What the answer says of a new seat's secret; a cookie holds it unless a program asked for it. */
function giveSecret(
  reply: FastifyReply,
  code: string,
  secret: string,
  { secretIn }: Pick<ClaimSeat, 'secretIn'>,
): { readonly secret?: string } {
  if (secretIn === 'body') return { secret };
  setSeatCookie(reply, code, secret);
  return {};
}

/** Every ticket brings a new secret with it; the one before stays good until a connection is opened with the new one. */
async function issueSecret({ room }: ActiveRoom, bearer: Bearer, secret: string, reply: FastifyReply) {
  const answer = await room.submit({ kind: 'issue-secret', ...bearer, secretHash: hashSecret(secret) });
  if (answer.ok) setSeatCookie(reply, room.code, secret);
  return answer;
}

/** Shortly after it was replaced it may come from a page that another one has overtaken; later it is a copy. */
async function rejectOldSecret({ room }: ActiveRoom, old: Bearer, now: number, reply: FastifyReply) {
  const { holder, shown } = old;
  const held = holderAt(room.state, holder);
  const at = (held && retiredSecret(held.secrets, shown)?.at) ?? 0;
  if (now - at < OVERTAKEN_MS) return rejectWith(reply, 'ask-again');
  // Rejected in any case: where the warning cannot be stored, the next attempt brings it.
  await room.submit({ kind: 'report-old-secret', holder, shown });
  clearSeatCookie(reply, room.code);
  return rejectWith(reply, 'old-secret');
}

async function claimSeat({ room }: ActiveRoom, claim: ClaimSeat, entropy: Entropy, reply: FastifyReply) {
  const { name, seat: wanted } = claim;
  const secret = newSecret(entropy);
  const secretHash = hashSecret(secret);
  const answer = await room.submit({ kind: 'take-seat', name, seat: wanted, secretHash });
  if (!answer.ok) return sendRejection(reply, answer);
  const seat = seatWithSecret(room.state, secretHash);
  // Vacated again in the same moment by the host.
  if (seat === null) return rejectWith(reply, 'seat-taken');
  return { seat, ...giveSecret(reply, room.code, secret, claim) };
}

function lobbyOf({ room, card }: ActiveRoom): z.infer<typeof lobbySchema> {
  const { state, code } = room;
  return {
    code,
    seats: seatInfos(state, null),
    terms: state.terms,
    card: { id: card.file.id, name: card.file.name },
    round: state.play?.number ?? 0,
  };
}
