// The secret of a seat on its way: set as a cookie bound to the room's path, read from cookie or header.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { roomPath, SEATS } from '../../shared-engine/index.ts';
import type { Owner } from '../room/command.ts';
import type { RoomState } from '../room/state.ts';
import { keyOf, sameKey } from '../secrets.ts';

const NAME = 'seat';
/** How long a browser keeps the seat, in seconds. */
const KEPT_SECONDS = 30 * 24 * 60 * 60;

export function giveSecret(reply: FastifyReply, code: string, secret: string): void {
  reply.setCookie(NAME, secret, {
    path: roomPath(code),
    httpOnly: true,
    sameSite: 'strict',
    secure: 'auto',
    maxAge: KEPT_SECONDS,
  });
}

export function takeSecret(reply: FastifyReply, code: string): void {
  reply.clearCookie(NAME, { path: roomPath(code) });
}

/** Who brings a secret, and its key. */
export interface Bearer {
  readonly owner: Owner;
  readonly shown: string;
}

/** The person whose secret this request brings, if that person still sits in the room. */
export function bearerOf(request: FastifyRequest, state: RoomState): Bearer | null {
  const secret = inHeader(request) ?? request.cookies[NAME];
  if (secret === undefined) return null;
  const shown = keyOf(secret);
  for (const seat of SEATS) {
    const chair = state.chairs[seat];
    if (chair.kind !== 'person') continue;
    const { keys, since } = chair;
    const good = keys.some((key) => sameKey(key, shown));
    if (good) return { owner: { seat, since }, shown };
  }
  return null;
}

/** For programs that keep no cookies. */
function inHeader({ headers }: FastifyRequest): string | undefined {
  return headers.authorization?.match(/^Bearer ([\w-]{20,100})$/)?.[1];
}
