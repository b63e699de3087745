// One's own data in a room: what is kept of whoever holds a seat there, to read and to have forgotten.
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { ROOMS_PATH } from '../../shared-engine/index.ts';
import type { Store } from '../ports.ts';
import { parseCode } from '../room/code.ts';
import type { LiveRoom } from '../room/live.ts';
import { keptOf, keyless, nameless } from '../room/mine.ts';
import type { Registry } from '../room/registry.ts';
import { passOn, refuseWith } from './refusals.ts';
import { type Bearer, bearerOf, takeSecret } from './seat-cookie.ts';

interface Ports {
  readonly registry: Registry;
  readonly store: Store;
}

type AtRoom = { Params: { code: string } };

export function mineRoutes(app: FastifyInstance, { registry, store }: Ports): void {
  const path = `${ROOMS_PATH}/:code/mine`;

  app.get<AtRoom>(path, async (request, reply) => {
    const found = await seatOf(request);
    if (typeof found === 'string') return refuseWith(reply, found);
    const { live, bearer } = found;
    const { code } = live.room;
    const log = (await store.load(code)) ?? [];
    reply.header('content-disposition', 'attachment; filename="quadrille-mine.json"');
    return { code, seat: bearer.owner.seat, kept: keptOf(log, bearer.owner) };
  });

  app.delete<AtRoom>(path, async (request, reply) => {
    const found = await seatOf(request);
    if (typeof found === 'string') return refuseWith(reply, found);
    const { live, bearer } = found;
    const { owner } = bearer;
    const { code } = live.room;
    // The name first: should anything fail behind it, the seat's owner can ask again.
    await store.amend(code, nameless((await store.load(code)) ?? [], owner));
    const answer = await live.room.submit({ kind: 'act', owner, act: { kind: 'leave' } });
    if (!answer.ok) return passOn(reply, answer);
    await store.amend(code, keyless((await store.load(code)) ?? [], owner));
    takeSecret(reply, code);
    return reply.code(204).send();
  });

  /** The records of a class belong to its teacher's report and go with the class. */
  async function seatOf(request: FastifyRequest<AtRoom>): Promise<Found | 'no-such-room' | 'not-seated'> {
    const code = parseCode(request.params.code);
    const live = code === null ? null : await registry.find(code);
    if (live === null || live.room.state.door === 'class') return 'no-such-room';
    const bearer = bearerOf(request, live.room.state);
    return bearer === null ? 'not-seated' : { live, bearer };
  }
}

interface Found {
  readonly live: LiveRoom;
  readonly bearer: Bearer;
}
