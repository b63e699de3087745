// The ways into a class besides its first cookie: a teacher's key, and the short code of the big screen.
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import { bringScreenCodeSchema, CLASSES_PATH, type screenCodeSchema } from '../../shared-engine/index.ts';
import { isAllowed, UNUSED, type Used, usedOnceMore } from '../aggregate/allowance.ts';
import type { ActiveClass } from '../class/active-class.ts';
import type { Clock } from '../ports.ts';
import { hashSecret, newScreenCode, newSecret, parseScreenCode } from '../secrets.ts';
import { type AtClass, type ClassRoutes, classAt } from './classes.ts';
import { isTeacher, setClassCookie } from './cookies.ts';
import { createTries } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';
import { KEY_TRIES, teacherKeyRoutes } from './teacher-keys.ts';

/** Wrong codes for the big screen of one class, from wherever: of 900 million, 1,000 are tried in three hours. */
const WRONG_CODES = { atOnce: 30, everyMs: 10_000 } as const;

const PATH = `${CLASSES_PATH}/:code`;

export function classKeyRoutes(app: FastifyInstance, ports: ClassRoutes): void {
  const { classes, entropy, clock } = ports;
  const wrongCodes = new WrongCodes(clock);
  const isExceeded = createTries(app, KEY_TRIES);
  teacherKeyRoutes(app, {
    path: PATH,
    entropy,
    missing: 'no-such-class',
    at: (request) => classAt(classes, request),
    setCookie: (reply, code, secret) => setClassCookie(reply, code, 'teacher', secret),
  });

  app.post<AtClass>(`${PATH}/screen-codes`, async (request, reply) => {
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    if (!isTeacher(request, live.state)) return rejectWith(reply, 'not-the-teacher');
    const code = newScreenCode(entropy);
    const made = await live.submit({ kind: 'screen-code', codeHash: hashSecret(code) });
    if (!made.ok) return sendRejection(reply, made);
    return reply.code(201).send({ code } satisfies z.infer<typeof screenCodeSchema>);
  });

  app.post<AtClass>(`${PATH}/screens`, async (request, reply) => {
    if (await isExceeded(request)) return rejectWith(reply, 'too-fast');
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
