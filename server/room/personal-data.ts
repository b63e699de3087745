// What a room's log holds of one person: told to that person, and taken out of it when the person asks for that.
import { type RoundEvent, SEATS, type Seat, withSeat } from '../../shared-engine/index.ts';
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
    const entry = entryOf(event);
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
  if (event.kind === 'seat-renamed') return { ...event, name: FORGOTTEN_NAME };
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

function snapshotWithout(snapshot: RoomSnapshot, { since }: SeatHolder, secrets: boolean): RoomSnapshot {
  const seat = SEATS.find((one) => {
    const held = snapshot.seats[one];
    return (held.kind === 'person' || held.kind === 'external-bot') && held.since === since;
  });
  const held = seat === undefined ? null : snapshot.seats[seat];
  if (seat === undefined || (held?.kind !== 'person' && held?.kind !== 'external-bot')) return snapshot;
  const hidden = secrets ? { secrets: firstSecret(NO_SECRET_HASH) } : {};
  const seats = withSeat(snapshot.seats, seat, { ...held, name: FORGOTTEN_NAME, ...hidden });
  return { ...snapshot, seats };
}

/**
 * The events of this person from the one of sitting down to the one that vacated the seat, at whichever seats. A bot whose
 * answer was lost claims its seat again, and its stay begins with the first claim.
 */
function stayOf(recorded: readonly RecordedRoomEvent[], { since }: SeatHolder): RecordedRoomEvent[] {
  const satDown = recorded.find(({ seq }) => seq === since);
  let seat = satDown ? seatOf(satDown.event) : null;
  if (seat === null) return [];
  const before = recorded.filter((one) => one.seq < since && seatOf(one.event) === seat);
  const lastEnd = before.findLast(({ event }) => event.kind === 'seat-vacated')?.seq ?? 0;
  const claim = before.findIndex(({ seq, event }) => seq > lastEnd && event.kind === 'external-bot-seated');
  const stay = claim < 0 ? [] : before.slice(claim);
  for (const one of recorded) {
    const { event } = one;
    if (one.seq < since || !isAbout(event, seat)) continue;
    stay.push(one);
    if (event.kind === 'seats-swapped') seat = event.seat === seat ? event.other : event.seat;
    else if (event.kind === 'seat-vacated') break;
  }
  return stay;
}

function isAbout(event: RoomEvent, seat: Seat): boolean {
  return seatOf(event) === seat || (event.kind === 'seats-swapped' && event.other === seat);
}

function seatOf(event: RoomEvent): Seat | null {
  if (event.kind === 'round') return 'seat' in event.event ? event.event.seat : null;
  return 'seat' in event ? event.seat : null;
}

type Entry = Readonly<Record<string, unknown>> & { readonly what: string };

function entryOf(event: RoomEvent): Entry | null {
  switch (event.kind) {
    case 'seat-taken':
      return { what: 'sat down', seat: event.seat, name: event.name };
    case 'external-bot-seated':
      return { what: 'sat down as a bot', seat: event.seat, name: event.name };
    case 'seat-vacated':
      return { what: 'left' };
    case 'seat-renamed':
      return { what: 'got another name', name: event.name };
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
    case 'seats-swapped':
      return { what: 'changed places', seats: [event.seat, event.other] };
    case 'said':
      return { what: 'said', phrase: event.phrase };
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
