// The routes of bots that run elsewhere: the host makes an invitation, and the bot takes its seat with the secret in it.
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import {
  type botInvitedSchema,
  inviteBotSchema,
  ROOMS_PATH,
  seatBotSchema,
  type seatClaimedSchema,
} from '../../shared-engine/index.ts';
import type { Entropy } from '../ports.ts';
import type { ActiveRoom } from '../registry/active-room.ts';
import type { Registry } from '../registry/registry.ts';
import { parseName } from '../room/name.ts';
import { seatWithSecret } from '../room/state.ts';
import { parseCode } from '../room-code.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import { bearerHash, bearerOf, isProgram } from './cookies.ts';
import { rejectWith, sendRejection } from './rejections.ts';

export interface BotRoutes {
  readonly registry: Registry;
  readonly entropy: Entropy;
}

type AtRoom = { Params: { code: string } };

export function botRoutes(app: FastifyInstance, { registry, entropy }: BotRoutes): void {
  app.post<AtRoom>(`${ROOMS_PATH}/:code/invitations`, async (request, reply) => {
    const live = await roomAt(request);
    if (live === null) return rejectWith(reply, 'no-such-room');
    const body = inviteBotSchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    const bearer = bearerOf(request, live.room.state);
    if (bearer === null) return rejectWith(reply, 'not-seated');
    const { seat } = body.data;
    const secret = newSecret(entropy);
    const { holder } = bearer;
    const answer = await live.room.submit({
      kind: 'invite-bot',
      holder,
      seat,
      secretHash: hashSecret(secret),
    });
    if (!answer.ok) return sendRejection(reply, answer);
    return reply.code(201).send({ seat, secret } satisfies z.infer<typeof botInvitedSchema>);
  });

  app.post<AtRoom>(`${ROOMS_PATH}/:code/bots`, async (request, reply) => {
    const live = await roomAt(request);
    if (live === null) return rejectWith(reply, 'no-such-room');
    const body = seatBotSchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    // The answer brings a secret, and a page's scripts never read one.
    if (!isProgram(request)) return rejectWith(reply, 'cookie-only');
    const shown = bearerHash(request);
    if (shown === null) return rejectWith(reply, 'invitation-over');
    const name = parseName(body.data.name);
    if (name === null) return rejectWith(reply, 'bad-name');
    const secret = newSecret(entropy);
    const secretHash = hashSecret(secret);
    const answer = await live.room.submit({ kind: 'seat-external-bot', name, shown, secretHash });
    if (!answer.ok) return sendRejection(reply, answer);
    const seat = seatWithSecret(live.room.state, secretHash);
    // Removed again in the same moment by the host.
    if (seat === null) return rejectWith(reply, 'invitation-over');
    return reply.code(201).send({ seat, secret } satisfies z.infer<typeof seatClaimedSchema>);
  });

  async function roomAt({ params }: FastifyRequest<AtRoom>): Promise<ActiveRoom | null> {
    const code = parseCode(params.code);
    const live = code === null ? null : await registry.find(code);
    return live?.policy.isOpen ? live : null;
  }
}
