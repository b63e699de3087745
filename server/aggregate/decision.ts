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

export const ACCEPTED: Answer = { ok: true };

export function reject(code: RoomRejectionCode): Rejection {
  return { ok: false, code, message: ROOM_REJECTIONS[code] };
}

export function accept<Event>(events: readonly Event[]): Decision<Event> {
  return { ok: true, events };
}
