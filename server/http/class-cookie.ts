// The secrets of a class on their way: the teacher's and the pupils', each a cookie bound to the path of the class.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { classPath } from '../../shared-engine/index.ts';
import type { ClassState, Pupil } from '../class/state.ts';
import { keyOf, sameKey } from '../secrets.ts';

const NAMES = { teacher: 'desk', pupil: 'pupil' } as const;
type Holder = keyof typeof NAMES;

/** How long a browser keeps the secret, in seconds. */
const KEPT_SECONDS = 30 * 24 * 60 * 60;

export function giveClassSecret(reply: FastifyReply, code: string, holder: Holder, secret: string): void {
  reply.setCookie(NAMES[holder], secret, {
    path: classPath(code),
    httpOnly: true,
    sameSite: 'strict',
    secure: 'auto',
    maxAge: KEPT_SECONDS,
  });
}

export function takeClassSecrets(reply: FastifyReply, code: string): void {
  for (const name of Object.values(NAMES)) reply.clearCookie(name, { path: classPath(code) });
}

export function isTeacher(request: FastifyRequest, { key }: ClassState): boolean {
  return keysOf(request, 'teacher').some((shown) => sameKey(key, shown));
}

export function pupilOf(request: FastifyRequest, { pupils }: ClassState): Pupil | null {
  const shown = keysOf(request, 'pupil');
  return pupils.find(({ key }) => shown.some((one) => sameKey(key, one))) ?? null;
}

/** From the cookie, or from a header for programs that keep none. */
function keysOf({ headers, cookies }: FastifyRequest, holder: Holder): string[] {
  const header = headers.authorization?.match(/^Bearer ([\w-]{20,100})$/)?.[1];
  return [header, cookies[NAMES[holder]]].flatMap((secret) => (secret === undefined ? [] : [keyOf(secret)]));
}
