// Secrets in requests and answers: cookies bound to the path of a room or a class, or a header for programs.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { classPath, clubPath, drillPath, roomPath, SEATS } from '../../shared-engine/index.ts';
import { type ClassPlayer, type ClassState, teacherHashes } from '../class/state.ts';
import type { SeatHolder } from '../room/command.ts';
import type { SeatSecrets } from '../room/seat-secrets.ts';
import { heldAt, type RoomState } from '../room/state.ts';
import { hashSecret, isSameHash } from '../secrets.ts';

const SEAT = 'seat';
const CLASS_ROLES = ['teacher', 'player', 'screen'] as const;
type ClassRole = (typeof CLASS_ROLES)[number];

/**
 * How long a browser keeps a secret, in seconds: 400 days, and no browser keeps one longer. What is used for longer sets
 * its cookie anew (`badgeOf`).
 */
const DAY_SECONDS = 24 * 60 * 60;
const KEPT_SECONDS = 400 * DAY_SECONDS;

export function setSeatCookie(reply: FastifyReply, code: string, secret: string): void {
  setCookie(reply, SEAT, secret, roomPath(code));
}

export function clearSeatCookie(reply: FastifyReply, code: string): void {
  reply.clearCookie(SEAT, { path: roomPath(code) });
}

export function setClassCookie(reply: FastifyReply, code: string, role: ClassRole, secret: string): void {
  setCookie(reply, role, secret, classPath(code));
}

export function clearClassCookies(
  reply: FastifyReply,
  code: string,
  roles: readonly ClassRole[] = CLASS_ROLES,
): void {
  for (const role of roles) reply.clearCookie(role, { path: classPath(code) });
}

/** Of a published drill: its teacher, or a device on which it is played. */
export function setDrillCookie(
  reply: FastifyReply,
  code: string,
  role: 'teacher' | 'player',
  secret: string,
): void {
  setCookie(reply, role, secret, drillPath(code));
}

export function clearDrillCookies(
  reply: FastifyReply,
  code: string,
  roles: readonly ('teacher' | 'player')[] = ['teacher', 'player'],
): void {
  for (const role of roles) reply.clearCookie(role, { path: drillPath(code) });
}

/** Of the teacher of a club's page. */
export function setClubCookie(reply: FastifyReply, code: string, secret: string): void {
  setCookie(reply, 'teacher', secret, clubPath(code));
}

export function clearClubCookie(reply: FastifyReply, code: string): void {
  reply.clearCookie('teacher', { path: clubPath(code) });
}

/** Hash of the secret of the device that sends this; null where it brings none. */
export function deviceHash(request: FastifyRequest): string | null {
  return hashesIn(request, 'player')[0] ?? null;
}

/**
 * Whether a request comes from a program that is no page: a browser adds an Origin to everything that a page posts.
 * A page's scripts never get to read a secret, so that nothing that gets into a page can carry a seat away.
 */
export function isProgram({ headers }: FastifyRequest): boolean {
  return headers.origin === undefined;
}

/** Who brings a seat's secret, and the hash of that secret. */
export interface Bearer {
  readonly holder: SeatHolder;
  readonly shown: string;
}

/** The holder of a seat whose secret this request brings, if that one still sits in the room and the secret is good. */
export function bearerOf(request: FastifyRequest, state: RoomState): Bearer | null {
  return bearerWhere(request, state, ({ current, successors }) => [
    current,
    ...successors.map(({ hash }) => hash),
  ]);
}

/** The holder of a seat of whom this request brings a secret that was replaced. */
export function oldBearerOf(request: FastifyRequest, state: RoomState): Bearer | null {
  return bearerWhere(request, state, ({ retired }) => retired.map(({ hash }) => hash));
}

function bearerWhere(
  request: FastifyRequest,
  state: RoomState,
  hashesOf: (secrets: SeatSecrets) => readonly string[],
): Bearer | null {
  // A program's header goes before a cookie.
  const [shown] = hashesIn(request, SEAT);
  if (shown === undefined) return null;
  for (const seat of SEATS) {
    const held = heldAt(state, seat);
    if (held === null) continue;
    const isTheirs = hashesOf(held.secrets).some((hash) => isSameHash(hash, shown));
    if (isTheirs) return { holder: { seat, since: held.since }, shown };
  }
  return null;
}

/** Whether this request brings the secret of whoever opened or published it, or a key that has not been taken back. */
export function isTeacher(request: FastifyRequest, state: Pick<ClassState, 'secretHash' | 'keys'>): boolean {
  const shown = hashesIn(request, 'teacher');
  return teacherHashes(state).some((hash) => shown.some((one) => isSameHash(hash, one)));
}

/** The cookie by which this request is its teacher's, to be set anew; null for anybody else, and for a program. */
export function badgeOf(
  request: FastifyRequest,
  state: Pick<ClassState, 'secretHash' | 'keys'>,
): string | null {
  const shown = request.cookies.teacher;
  if (shown === undefined) return null;
  return teacherHashes(state).some((hash) => isSameHash(hash, hashSecret(shown))) ? shown : null;
}

/** Whether this request comes from a big screen that was opened with the newest code. */
export function isScreen(request: FastifyRequest, { screen }: ClassState): boolean {
  const shown = hashesIn(request, 'screen');
  return screen.opened.some((hash) => shown.some((one) => isSameHash(hash, one)));
}

export function playerOf(request: FastifyRequest, { players }: ClassState): ClassPlayer | null {
  const player = anyPlayerOf(request, { players });
  return player?.removed ? null : player;
}

/** Also where the player is in the class no more. */
export function hasPlayerCookie({ cookies }: FastifyRequest): boolean {
  return cookies.player !== undefined;
}

/** Somebody who was removed may still see and delete what is stored. */
export function anyPlayerOf(
  request: FastifyRequest,
  { players }: Pick<ClassState, 'players'>,
): ClassPlayer | null {
  const shown = hashesIn(request, 'player');
  return players.find(({ secretHash }) => shown.some((one) => isSameHash(secretHash, one))) ?? null;
}

function setCookie(reply: FastifyReply, name: string, secret: string, path: string): void {
  reply.setCookie(name, secret, {
    path,
    httpOnly: true,
    sameSite: 'strict',
    secure: 'auto',
    maxAge: KEPT_SECONDS,
  });
}

/** Hash of the secret in the header that programs use; null where there is none. */
export function bearerHash({ headers }: FastifyRequest): string | null {
  const secret = headers.authorization?.match(/^Bearer ([\w-]{20,100})$/)?.[1];
  return secret === undefined ? null : hashSecret(secret);
}

function hashesIn(request: FastifyRequest, name: string): string[] {
  const cookie = request.cookies[name];
  const hashes = [bearerHash(request), cookie === undefined ? null : hashSecret(cookie)];
  return hashes.filter((hash) => hash !== null);
}
