// What a decision comes to: events, or a rejection as a value (rule E1).
import { type RejectionCode, ROOM_REJECTIONS, type RoomRejectionCode } from '../../shared-engine/index.ts';

export interface Rejection {
  readonly ok: false;
  readonly code: RejectionCode;
  readonly message: string;
}

export type Decision<Event> = { readonly ok: true; readonly events: readonly Event[] } | Rejection;

/** How a command was answered. */
export type Answer = { readonly ok: true } | Rejection;

/** Rejections of how a command came rather than of the command: the same id may be right over another connection. */
const OF_THE_WAY: readonly RejectionCode[] = ['newer-connection', 'try-later'];

/** Whether every repetition of the command gets the same answer (rule ID2). */
export function isFinal(answer: Answer): boolean {
  return answer.ok || !OF_THE_WAY.includes(answer.code);
}

export const ACCEPTED: Answer = { ok: true };

export function reject(code: RoomRejectionCode): Rejection {
  return { ok: false, code, message: ROOM_REJECTIONS[code] };
}

export function accept<Event>(events: readonly Event[]): Decision<Event> {
  return { ok: true, events };
}
