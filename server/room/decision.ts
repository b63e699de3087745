// What a decision about a room comes to: events, or a refusal as a value (rule E1).
import { type RefusalCode, ROOM_REFUSALS, type RoomRefusalCode } from '../../shared-engine/index.ts';
import type { RoomEvent } from './event.ts';

export interface Refusal {
  readonly ok: false;
  readonly code: RefusalCode;
  readonly sentence: string;
}

export type RoomDecision = { readonly ok: true; readonly events: readonly RoomEvent[] } | Refusal;

export function turnDown(code: RoomRefusalCode): Refusal {
  return { ok: false, code, sentence: ROOM_REFUSALS[code] };
}

export function accept(events: readonly RoomEvent[]): RoomDecision {
  return { ok: true, events };
}
