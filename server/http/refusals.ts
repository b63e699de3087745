// Refusals as HTTP answers: which status each code has, and the one shape they all share.
import type { FastifyReply } from 'fastify';
import { type HttpRefusal, ROOM_REFUSALS, type RoomRefusalCode } from '../../shared-engine/index.ts';
import type { Refusal } from '../room/decision.ts';

const STATUS: Readonly<Record<RoomRefusalCode, number>> = {
  'bad-frame': 400,
  'bad-request': 400,
  'bad-name': 422,
  'bad-card': 422,
  'no-such-room': 404,
  'seat-taken': 409,
  'not-seated': 403,
  'not-your-seat': 403,
  'not-the-host': 403,
  held: 409,
  'led-table': 403,
  'no-such-class': 404,
  'not-the-teacher': 403,
  'class-over': 409,
  'class-full': 503,
  'no-more-deals': 409,
  'no-line': 409,
  'line-open': 409,
  'line-moved': 409,
  'not-all-chosen': 409,
  'no-such-pupil': 404,
  'bad-drill': 422,
  'no-round': 409,
  'wrong-round': 409,
  'round-running': 409,
  'too-fast': 429,
  'wrong-origin': 403,
  'table-full': 503,
  'too-many-rooms': 503,
  'try-later': 503,
};

export function refusalBody(code: RoomRefusalCode, problems: readonly string[] = []): HttpRefusal {
  return { code, sentence: ROOM_REFUSALS[code], problems: [...problems] };
}

export function refuseWith(reply: FastifyReply, code: RoomRefusalCode, problems: readonly string[] = []) {
  return reply.code(STATUS[code]).send(refusalBody(code, problems));
}

/** A refusal that a room decided; those of a round are conflicts with its state. */
export function passOn(reply: FastifyReply, { code, sentence }: Refusal) {
  const status = isRoomCode(code) ? STATUS[code] : 409;
  const body: HttpRefusal = { code, sentence, problems: [] };
  return reply.code(status).send(body);
}

function isRoomCode(code: string): code is RoomRefusalCode {
  return code in STATUS;
}
