// What a room's log holds of one person: told to that person, and taken out of it when the person asks for that.
import { type RoundEvent, type Seat, withSeat } from '../../shared-engine/index.ts';
import { rewriteLog } from '../aggregate/rewrite.ts';
import type { Store } from '../ports.ts';
import type { SeatHolder } from './command.ts';
import type { RoomEvent } from './event.ts';
import type { RecordedRoomEvent } from './room.ts';
import { firstSecret } from './seat-secrets.ts';
import { type RoomSnapshot, roomEvents, roomSnapshotFrom } from './stored-event.ts';

/** Stands where a name was. */
export const FORGOTTEN_NAME = 'Somebody';
/** Is the hash of no secret that anybody could find. */
export const NO_SECRET_HASH = '0'.repeat(64);

/** One thing that is stored, in plain words and numbers. */
export type PersonalDataEntry = Readonly<Record<string, unknown>> & {
  readonly at: number;
  readonly what: string;
};

/** Everything from sitting down to leaving, oldest first; built up for this person, who alone may read it. */
export function personalDataOf(
  recorded: readonly RecordedRoomEvent[],
  holder: SeatHolder,
): PersonalDataEntry[] {
  return stayOf(recorded, holder).flatMap(({ at, event }) => {
    const entry = entryOf(event, holder.seat);
    return entry === null ? [] : [{ at, ...entry }];
  });
}

/** Takes the person's name out of the stored log. */
export function forgetName(store: Pick<Store, 'history' | 'rewrite'>, code: string, holder: SeatHolder) {
  return forget(store, code, holder, false);
}

/** Takes the name and the hashes of the person's secrets out of the stored log; to be done when the seat is given up. */
export function forgetPerson(store: Pick<Store, 'history' | 'rewrite'>, code: string, holder: SeatHolder) {
  return forget(store, code, holder, true);
}

function forget(
  store: Pick<Store, 'history' | 'rewrite'>,
  code: string,
  holder: SeatHolder,
  secrets: boolean,
): Promise<void> {
  return rewriteLog(store, code, {
    codec: roomEvents,
    changed: (recorded) =>
      stayOf(recorded, holder).flatMap((one) => {
        const event = withoutPerson(one.event, secrets);
        return event === null ? [] : [{ ...one, event }];
      }),
    snapshot: (text) => JSON.stringify(snapshotWithout(roomSnapshotFrom(text), holder, secrets)),
  });
}

/** Null for an event that says nothing of who it is. */
function withoutPerson(event: RoomEvent, secrets: boolean): RoomEvent | null {
  const hidden = secrets ? { secretHash: NO_SECRET_HASH } : {};
  if (event.kind === 'seat-taken' || event.kind === 'external-bot-seated')
    return { ...event, name: FORGOTTEN_NAME, ...hidden };
  if (!secrets) return null;
  switch (event.kind) {
    case 'secret-issued':
      return { ...event, secretHash: NO_SECRET_HASH, shown: NO_SECRET_HASH };
    case 'secret-confirmed':
    case 'old-secret-shown':
      return { ...event, secretHash: NO_SECRET_HASH };
    default:
      return null;
  }
}

function snapshotWithout(
  snapshot: RoomSnapshot,
  { seat, since }: SeatHolder,
  secrets: boolean,
): RoomSnapshot {
  const held = snapshot.seats[seat];
  if (held.kind !== 'person' && held.kind !== 'external-bot') return snapshot;
  if (held.since !== since) return snapshot;
  const hidden = secrets ? { secrets: firstSecret(NO_SECRET_HASH) } : {};
  const seats = withSeat(snapshot.seats, seat, { ...held, name: FORGOTTEN_NAME, ...hidden });
  return { ...snapshot, seats };
}

/**
 * The events of this seat from the one with which the person sat down to the one that vacated the seat. A bot whose
 * answer was lost claims its seat again, and its stay begins with the first claim.
 */
function stayOf(recorded: readonly RecordedRoomEvent[], { seat, since }: SeatHolder): RecordedRoomEvent[] {
  const own = recorded.filter(({ event }) => seatOf(event) === seat);
  const isEnd = ({ event }: RecordedRoomEvent) => event.kind === 'seat-vacated';
  const before = own.findLast((one) => one.seq < since && isEnd(one))?.seq ?? 0;
  const claim = own.find(({ seq, event }) => seq > before && event.kind === 'external-bot-seated');
  const from = Math.min(since, claim?.seq ?? since);
  const to = own.find((one) => one.seq > since && isEnd(one))?.seq ?? Number.POSITIVE_INFINITY;
  return own.filter(({ seq }) => seq >= from && seq <= to);
}

function seatOf(event: RoomEvent): Seat | null {
  if (event.kind === 'round') return 'seat' in event.event ? event.event.seat : null;
  return 'seat' in event ? event.seat : null;
}

type Entry = Readonly<Record<string, unknown>> & { readonly what: string };

function entryOf(event: RoomEvent, seat: Seat): Entry | null {
  switch (event.kind) {
    case 'seat-taken':
      return { what: 'sat down', seat, name: event.name };
    case 'external-bot-seated':
      return { what: 'sat down as a bot', seat, name: event.name };
    case 'seat-vacated':
      return { what: 'left' };
    case 'connected':
      return { what: 'connected' };
    case 'disconnected':
      return { what: 'disconnected' };
    case 'secret-issued':
      return { what: 'secret issued' };
    case 'secret-confirmed':
      return { what: 'secret used' };
    case 'old-secret-shown':
      return { what: 'old secret shown' };
    case 'ready':
      return { what: event.ready ? 'ready' : 'not ready' };
    case 'round':
      return choiceEntry(event.event);
    default:
      return null;
  }
}

function choiceEntry(event: RoundEvent): Entry | null {
  switch (event.kind) {
    case 'submitted': {
      const { tiles, blind, by } = event.pass;
      return { what: 'passed', step: event.step, tiles, blind, by };
    }
    case 'withdrawn':
      return { what: 'took back', step: event.step };
    case 'voted':
      return { what: 'voted', go: event.go, by: event.by };
    case 'asked':
      return { what: 'asked by courtesy', count: event.count, by: event.by };
    default:
      return null;
  }
}
