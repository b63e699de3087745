// The routes of a room: open, look in, take a seat, get a ticket, read its card.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import {
  type ClaimSeat,
  claimSeatSchema,
  type lobbySchema,
  openRoomSchema,
  ROOMS_PATH,
  SEATS,
} from '../../shared-engine/index.ts';
import type { Entropy, Tickets } from '../ports.ts';
import { seatInfos } from '../room/audience.ts';
import { parseCode } from '../room/code.ts';
import type { LiveRoom } from '../room/live.ts';
import { parseName } from '../room/name.ts';
import type { Registry } from '../room/registry.ts';
import { keyOf, newSecret } from '../secrets.ts';
import { chosenCard } from './chosen-card.ts';
import { openingLimit } from './opening-limit.ts';
import { passOn, refuseWith } from './refusals.ts';
import { type Bearer, bearerOf, giveSecret } from './seat-cookie.ts';

export interface RoomRoutes {
  readonly registry: Registry;
  readonly tickets: Tickets;
  readonly entropy: Entropy;
  /** Rooms one address may open a minute; 0 for no limit. */
  readonly roomsPerMinute: number;
}

type AtRoom = { Params: { code: string } };

export function roomRoutes(
  app: FastifyInstance,
  { registry, tickets, entropy, roomsPerMinute }: RoomRoutes,
): void {
  const opening = openingLimit(roomsPerMinute);

  app.post(ROOMS_PATH, { config: opening }, async (request, reply) => {
    const body = openRoomSchema.safeParse(request.body);
    if (!body.success) return refuseWith(reply, 'bad-request');
    const { door, terms, bots } = body.data;
    const name = parseName(body.data.name);
    if (name === null) return refuseWith(reply, 'bad-name');
    const card = chosenCard(body.data.card);
    if (!card.ok) return refuseWith(reply, 'bad-card', card.problems);
    const secret = newSecret(entropy);
    const opened = await registry.open({ door, terms, bots, card: card.choice, name, key: keyOf(secret) });
    if (!opened.ok) return passOn(reply, opened);
    const { code } = opened.live.room;
    giveSecret(reply, code, secret);
    return reply.code(201).send({ code, seat: 0 });
  });

  app.get<AtRoom>(`${ROOMS_PATH}/:code`, async (request, reply) => {
    const live = await roomAt(request);
    return live ? lobbyOf(live) : refuseWith(reply, 'no-such-room');
  });

  app.post<AtRoom>(`${ROOMS_PATH}/:code/seats`, async (request, reply) => {
    const live = await roomAt(request);
    if (live === null) return refuseWith(reply, 'no-such-room');
    const body = claimSeatSchema.safeParse(request.body);
    if (!body.success) return refuseWith(reply, 'bad-request');
    // Who sits already keeps the seat: a claim sent twice must not take two.
    const held = bearerOf(request, live.room.state);
    if (held) return { seat: held.owner.seat };
    const name = parseName(body.data.name);
    if (name === null) return refuseWith(reply, 'bad-name');
    return claim(live, { name, seat: body.data.seat }, reply);
  });

  app.post<AtRoom>(`${ROOMS_PATH}/:code/ticket`, async (request, reply) => {
    const live = await roomAt(request);
    if (live === null) return refuseWith(reply, 'no-such-room');
    const { code, state } = live.room;
    const bearer = bearerOf(request, state);
    if (bearer === null && !live.table.hasRoomToWatch) return refuseWith(reply, 'table-full');
    if (bearer !== null) {
      const answer = await changeSecret(live, bearer, reply);
      if (!answer.ok) return passOn(reply, answer);
    }
    const owner = bearer?.owner ?? null;
    return { ticket: await tickets.issue({ code, owner }), seat: owner?.seat ?? null };
  });

  app.get<AtRoom>(`${ROOMS_PATH}/:code/card`, async (request, reply) => {
    const live = await roomAt(request);
    return live ? live.card.file : refuseWith(reply, 'no-such-room');
  });

  /** A table of a class is there for its pupils alone: whoever watched could put a name beside a choice. */
  async function roomAt(request: FastifyRequest<AtRoom>): Promise<LiveRoom | null> {
    const code = parseCode(request.params.code);
    const live = code === null ? null : await registry.find(code);
    const { state } = live?.room ?? {};
    return state?.door === 'class' && bearerOf(request, state) === null ? null : live;
  }

  /** Every return gets a secret of its own, so that one that was overheard or copied dies with the next return. */
  async function changeSecret({ room }: LiveRoom, { owner, shown }: Bearer, reply: FastifyReply) {
    const secret = newSecret(entropy);
    const answer = await room.submit({ kind: 'change-key', owner, shown, key: keyOf(secret) });
    if (answer.ok) giveSecret(reply, room.code, secret);
    return answer;
  }

  async function claim({ room }: LiveRoom, wish: Pick<ClaimSeat, 'name' | 'seat'>, reply: FastifyReply) {
    const secret = newSecret(entropy);
    const key = keyOf(secret);
    const answer = await room.submit({ kind: 'take-seat', ...wish, key });
    if (!answer.ok) return passOn(reply, answer);
    const seat = SEATS.find((s) => {
      const chair = room.state.chairs[s];
      return chair.kind === 'person' && chair.keys.includes(key);
    });
    // Freed again in the same moment by the host.
    if (seat === undefined) return refuseWith(reply, 'seat-taken');
    giveSecret(reply, room.code, secret);
    return { seat };
  }
}

function lobbyOf({ room, card }: LiveRoom): z.infer<typeof lobbySchema> {
  const { state, code } = room;
  return {
    code,
    seats: seatInfos(state),
    terms: state.terms,
    card: { id: card.card.id, name: card.card.name },
    round: state.play?.number ?? 0,
  };
}
