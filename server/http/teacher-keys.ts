// The teacher's keys of a class, a published drill or a club's page: made by whoever is its teacher, and brought by another computer.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { bringKeySchema, type teacherKeySchema } from '../../shared-engine/index.ts';
import type { Answer } from '../aggregate/decision.ts';
import { type ClassState, teacherHashes } from '../class/state.ts';
import type { Entropy } from '../ports.ts';
import { hashSecret, isSameHash, newSecret } from '../secrets.ts';
import { isTeacher } from './cookies.ts';
import { createTries } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';

/** How often one address brings a key in a minute, besides the limit of all routes: few computers do. */
export const KEY_TRIES = 20;

type AtCode = { Params: { code: string } };

/** What has teacher's keys. */
interface Taught {
  readonly code: string;
  readonly state: Pick<ClassState, 'secretHash' | 'keys'>;
  submit(command: { readonly kind: 'make-key'; readonly secretHash: string }): Promise<Answer>;
}

export interface TaughtRoutes<Live extends Taught> {
  /** Of one of them, with `:code` in it. */
  readonly path: string;
  readonly entropy: Entropy;
  readonly missing: 'no-such-class' | 'no-such-drill' | 'no-such-club';
  at(request: Pick<FastifyRequest<AtCode>, 'params'>): Promise<Live | null>;
  setCookie(reply: FastifyReply, code: string, secret: string): void;
}

/** Answers what is asked for to its teacher; anybody else has been rejected when it answers null. */
export function taughtBy<Live extends Taught>({
  at,
  missing,
}: Pick<TaughtRoutes<Live>, 'at' | 'missing'>): (
  request: FastifyRequest<AtCode>,
  reply: FastifyReply,
) => Promise<Live | null> {
  return async (request, reply) => {
    const live = await at(request);
    if (live !== null && isTeacher(request, live.state)) return live;
    rejectWith(reply, live === null ? missing : 'not-the-teacher');
    return null;
  };
}

export function teacherKeyRoutes<Live extends Taught>(
  app: FastifyInstance,
  { path, entropy, missing, at, setCookie }: TaughtRoutes<Live>,
): void {
  const isExceeded = createTries(app, KEY_TRIES);
  const taught = taughtBy({ at, missing });

  app.post<AtCode>(`${path}/keys`, async (request, reply) => {
    const live = await taught(request, reply);
    if (live === null) return reply;
    const key = newSecret(entropy);
    const secretHash = hashSecret(key);
    const made = await live.submit({ kind: 'make-key', secretHash });
    if (!made.ok) return sendRejection(reply, made);
    const id = live.state.keys.findIndex((one) => isSameHash(one.secretHash, secretHash));
    return reply.code(201).send({ id, key } satisfies z.infer<typeof teacherKeySchema>);
  });

  app.post<AtCode>(`${path}/teacher`, async (request, reply) => {
    if (await isExceeded(request)) return rejectWith(reply, 'too-fast');
    const live = await at(request);
    if (live === null) return rejectWith(reply, missing);
    const body = bringKeySchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    const shown = hashSecret(body.data.key);
    if (!teacherHashes(live.state).some((one) => isSameHash(one, shown)))
      return rejectWith(reply, 'wrong-key');
    setCookie(reply, live.code, body.data.key);
    return { ok: true };
  });
}
