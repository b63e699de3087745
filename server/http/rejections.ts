// Rejections as HTTP answers: which status each code has, and the one shape they all share.
import type { FastifyReply } from 'fastify';
import { type HttpRejection, ROOM_REJECTIONS, type RoomRejectionCode } from '../../shared-engine/index.ts';
import type { Rejection } from '../aggregate/decision.ts';

const STATUS: Readonly<Record<RoomRejectionCode, number>> = {
  'bad-frame': 400,
  'bad-request': 400,
  'not-found': 404,
  'too-large': 413,
  'bad-name': 422,
  'bad-card': 422,
  'no-such-room': 404,
  'seat-taken': 409,
  'ask-again': 409,
  'old-secret': 403,
  'not-seated': 403,
  'not-your-seat': 403,
  'not-the-host': 403,
  'invitation-over': 403,
  'cookie-only': 403,
  held: 409,
  'teacher-controlled': 403,
  'no-such-class': 404,
  'not-the-teacher': 403,
  'wrong-key': 403,
  'wrong-screen-code': 403,
  'too-many-keys': 409,
  'class-moved-on': 409,
  'class-over': 409,
  'class-full': 503,
  'deals-not-given': 403,
  'tables-of-four': 409,
  'joining-closed': 409,
  removed: 403,
  'no-more-deals': 409,
  'not-guided': 409,
  'deal-open': 409,
  'already-advanced': 409,
  'too-few-chosen': 409,
  'not-all-chosen': 409,
  'no-such-player': 404,
  'bad-drill': 422,
  'no-such-drill': 404,
  'no-such-club': 404,
  'club-full': 409,
  'kept-off': 403,
  'listed-often': 429,
  'bad-club-name': 422,
  'not-for-clubs': 409,
  'drill-over': 409,
  'drill-withdrawn': 409,
  'drill-full': 409,
  'round-not-played': 422,
  'bad-question': 422,
  'bad-last-day': 422,
  'bots-too-slow': 422,
  'too-many-withdrawals': 409,
  'stays-ready': 409,
  'places-fixed': 409,
  'seats-fixed': 409,
  'too-often': 429,
  'used-up': 409,
  'no-round': 409,
  'wrong-round': 409,
  'round-running': 409,
  'newer-connection': 409,
  'too-fast': 429,
  'wrong-origin': 403,
  'table-full': 503,
  'too-many-rooms': 503,
  'too-many-empty-rooms': 429,
  'not-ready': 503,
  'try-later': 503,
  busy: 503,
};

/** What each request was rejected with, for the log and the metrics. */
const sent = new WeakMap<FastifyReply, string>();

export function rejectionBody(code: RoomRejectionCode, problems: readonly string[] = []): HttpRejection {
  return { code, message: ROOM_REJECTIONS[code], problems: [...problems] };
}

export function rejectWith(reply: FastifyReply, code: RoomRejectionCode, problems: readonly string[] = []) {
  return sendBody(reply, STATUS[code], rejectionBody(code, problems));
}

/** With another status than usual. */
export function rejectAs(reply: FastifyReply, status: number, code: RoomRejectionCode) {
  return sendBody(reply, status, rejectionBody(code));
}

/** Those of a round are conflicts with its state. */
export function statusOf(code: string): number {
  return isRoomCode(code) ? STATUS[code] : 409;
}

/** A rejection that a room decided. */
export function sendRejection(reply: FastifyReply, { code, message }: Rejection) {
  return sendBody(reply, statusOf(code), { code, message, problems: [] });
}

/** The code of the rejection that a request was answered with; null where it got what it asked for. */
export function rejectionIn(reply: FastifyReply): string | null {
  return sent.get(reply) ?? null;
}

function sendBody(reply: FastifyReply, status: number, body: HttpRejection) {
  sent.set(reply, body.code);
  return reply.code(status).send(body);
}

function isRoomCode(code: string): code is RoomRejectionCode {
  return code in STATUS;
}
