// What a room's log holds of one person: told to that person, and taken out of it when the person asks for that.
import type { RoundEvent, Seat } from '../../shared-engine/index.ts';
import type { Owner } from './command.ts';
import type { Logged, RoomEvent } from './event.ts';

/** Stands where a name was. */
export const FORGOTTEN_NAME = 'Somebody';
/** Is the hash of no secret that anybody could find. */
export const NO_KEY = '0'.repeat(64);

/** One thing that is kept, in plain words and numbers. */
export type KeptEntry = Readonly<Record<string, unknown>> & { readonly at: number; readonly what: string };

/** Everything from sitting down to leaving, oldest first; built up for this person, who alone may read it. */
export function keptOf(log: readonly Logged[], owner: Owner): KeptEntry[] {
  return stayOf(log, owner).flatMap(({ at, event }) => {
    const said = saidOf(event, owner.seat);
    return said === null ? [] : [{ at, ...said }];
  });
}

/** The events to be put in the place of those that name this person. */
export function nameless(log: readonly Logged[], owner: Owner): Logged[] {
  return changed(log, owner, (event) => {
    return event.kind === 'seat-taken' ? { ...event, name: FORGOTTEN_NAME } : null;
  });
}

/** The events to be put in the place of those that hold a hash of this person's secrets. */
export function keyless(log: readonly Logged[], owner: Owner): Logged[] {
  return changed(log, owner, (event) => {
    if (event.kind === 'seat-taken') return { ...event, key: NO_KEY };
    return event.kind === 'key-changed' ? { ...event, key: NO_KEY, before: NO_KEY } : null;
  });
}

function changed(
  log: readonly Logged[],
  owner: Owner,
  change: (event: RoomEvent) => RoomEvent | null,
): Logged[] {
  return stayOf(log, owner).flatMap((logged) => {
    const event = change(logged.event);
    return event === null ? [] : [{ ...logged, event }];
  });
}

/** The events of this seat from the one with which the person sat down to the one that freed the seat. */
function stayOf(log: readonly Logged[], { seat, since }: Owner): Logged[] {
  const end = log.find(({ seq, event }) => seq > since && event.kind === 'seat-freed' && event.seat === seat);
  return log.filter(({ seq, event }) => {
    const isOwn = seatOf(event) === seat;
    return isOwn && seq >= since && (end === undefined || seq <= end.seq);
  });
}

function seatOf(event: RoomEvent): Seat | null {
  if (event.kind === 'round') return 'seat' in event.event ? event.event.seat : null;
  return 'seat' in event ? event.seat : null;
}

type Said = Readonly<Record<string, unknown>> & { readonly what: string };

function saidOf(event: RoomEvent, seat: Seat): Said | null {
  switch (event.kind) {
    case 'seat-taken':
      return { what: 'sat down', seat, name: event.name };
    case 'seat-freed':
      return { what: 'left' };
    case 'came':
      return { what: 'connected' };
    case 'went':
      return { what: 'disconnected' };
    case 'key-changed':
      return { what: 'secret changed' };
    case 'ready':
      return { what: event.ready ? 'ready' : 'not ready' };
    case 'round':
      return chosen(event.event);
    default:
      return null;
  }
}

function chosen(event: RoundEvent): Said | null {
  switch (event.kind) {
    case 'sealed': {
      const { tiles, blind, by } = event.pass;
      return { what: 'passed', step: event.step, tiles, blind, by };
    }
    case 'taken-back':
      return { what: 'took back', step: event.step };
    case 'voted':
      return { what: 'voted', go: event.go, by: event.by };
    case 'asked':
      return { what: 'asked by courtesy', count: event.count, by: event.by };
    default:
      return null;
  }
}
