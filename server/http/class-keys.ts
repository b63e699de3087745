// The ways into a class besides its first cookie: a teacher's key, and the short code of the big screen.
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import {
  bringKeySchema,
  bringScreenCodeSchema,
  CLASSES_PATH,
  type screenCodeSchema,
  type teacherKeySchema,
} from '../../shared-engine/index.ts';
import { isAllowed, UNUSED, type Used, usedOnceMore } from '../aggregate/allowance.ts';
import type { ActiveClass } from '../class/active-class.ts';
import { teacherHashes } from '../class/state.ts';
import type { Clock } from '../ports.ts';
import { hashSecret, isSameHash, newScreenCode, newSecret, parseScreenCode } from '../secrets.ts';
import { addressKey } from './address-key.ts';
import { type AtClass, type ClassRoutes, classAt } from './classes.ts';
import { isTeacher, setClassCookie } from './cookies.ts';
import { rejectWith, sendRejection } from './rejections.ts';

/** How often one address brings a key or a code in a minute, besides the limit of all routes: few computers do. */
const TRIES = {
  max: 20,
  timeWindow: '1 minute',
  keyGenerator: ({ ip }: FastifyRequest) => addressKey(ip),
};

/** Wrong codes for the big screen of one class, from wherever: of 900 million, 1,000 are tried in three hours. */
const WRONG_CODES = { atOnce: 30, everyMs: 10_000 } as const;

export function classKeyRoutes(app: FastifyInstance, ports: ClassRoutes): void {
  const { classes, entropy, clock } = ports;
  const wrongCodes = new WrongCodes(clock);
  const [keyTries, codeTries] = [app.createRateLimit(TRIES), app.createRateLimit(TRIES)];

  app.post<AtClass>(`${CLASSES_PATH}/:code/keys`, async (request, reply) => {
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    if (!isTeacher(request, live.state)) return rejectWith(reply, 'not-the-teacher');
    const key = newSecret(entropy);
    const secretHash = hashSecret(key);
    const made = await live.submit({ kind: 'make-key', secretHash });
    if (!made.ok) return sendRejection(reply, made);
    const id = live.state.keys.findIndex((one) => isSameHash(one.secretHash, secretHash));
    return reply.code(201).send({ id, key } satisfies z.infer<typeof teacherKeySchema>);
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/teacher`, async (request, reply) => {
    if (await isExceeded(keyTries, request)) return rejectWith(reply, 'too-fast');
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    const body = bringKeySchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    const shown = hashSecret(body.data.key);
    if (!teacherHashes(live.state).some((one) => isSameHash(one, shown)))
      return rejectWith(reply, 'wrong-key');
    setClassCookie(reply, live.code, 'teacher', body.data.key);
    return { ok: true };
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/screen-codes`, async (request, reply) => {
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    if (!isTeacher(request, live.state)) return rejectWith(reply, 'not-the-teacher');
    const code = newScreenCode(entropy);
    const made = await live.submit({ kind: 'screen-code', codeHash: hashSecret(code) });
    if (!made.ok) return sendRejection(reply, made);
    return reply.code(201).send({ code } satisfies z.infer<typeof screenCodeSchema>);
  });

  app.post<AtClass>(`${CLASSES_PATH}/:code/screens`, async (request, reply) => {
    if (await isExceeded(codeTries, request)) return rejectWith(reply, 'too-fast');
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    const body = bringScreenCodeSchema.safeParse(request.body);
    if (!body.success) return rejectWith(reply, 'bad-request');
    if (!wrongCodes.mayTry(live)) return rejectWith(reply, 'too-often');
    const code = parseScreenCode(body.data.code);
    const secret = newSecret(entropy);
    const codeHash = code === null ? '' : hashSecret(code);
    const opened = await live.submit({ kind: 'open-screen', codeHash, secretHash: hashSecret(secret) });
    if (!opened.ok && opened.code === 'wrong-screen-code') wrongCodes.count(live);
    if (!opened.ok) return sendRejection(reply, opened);
    setClassCookie(reply, live.code, 'screen', secret);
    return { ok: true };
  });
}

async function isExceeded(
  countIn: ReturnType<FastifyInstance['createRateLimit']>,
  request: FastifyRequest,
): Promise<boolean> {
  const counted = await countIn(request);
  return !counted.isAllowed && counted.isExceeded;
}

/** At this server: a short code is found by trying, so that trying is slow. */
class WrongCodes {
  readonly #clock: Clock;
  readonly #used = new WeakMap<ActiveClass, Used>();

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  mayTry(live: ActiveClass): boolean {
    return isAllowed(this.#used.get(live) ?? UNUSED, WRONG_CODES, this.#clock.now());
  }

  count(live: ActiveClass): void {
    const used = this.#used.get(live) ?? UNUSED;
    this.#used.set(live, usedOnceMore(used, WRONG_CODES, this.#clock.now()));
  }
}
