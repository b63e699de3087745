// What the room knows of a holder's connections after one has opened or ended.
import type { RoomEvent } from './event.ts';
import { type HeldSeat, newestConnection, type Presence } from './state.ts';

export function connectedBy({ node, connection, from }: RoomEvent & { kind: 'connected' }): Presence {
  return { kind: 'connected', node, connection, ...(from && { from }) };
}

/** The holder's newest connection ended at this time, in milliseconds since 1970; which one it was stays known (rule ID6). */
export function endedAt(held: HeldSeat | null, since: number): Presence {
  const newest = held && newestConnection(held);
  if (!newest) return { kind: 'disconnected', since, last: null };
  const { connection, from } = newest;
  return { kind: 'disconnected', since, last: { connection, ...(from && { from }) } };
}
