// How a pupil comes in: a free place at a table, or a table of his own, and a secret for it.
import { SEATS, type Seat } from '../../shared-engine/index.ts';
import { type Refusal, turnDown } from '../room/decision.ts';
import type { Registry } from '../room/registry.ts';
import type { LiveClass } from './live-class.ts';
import { pupilsAtTable } from './state.ts';

export interface Joining {
  readonly name: string;
  /** Hashes of the secrets for the class and for the seat at the table. */
  readonly key: string;
  readonly seatKey: string;
}

export type Joined = { readonly ok: true; readonly room: string; readonly seat: Seat } | Refusal;

export function join(live: LiveClass, registry: Registry, joining: Joining): Promise<Joined> {
  return live.door.run(() => comeIn(live, registry, joining));
}

async function comeIn(live: LiveClass, registry: Registry, joining: Joining): Promise<Joined> {
  if (live.state.ended) return turnDown('class-over');
  const place = await freePlace(live, registry);
  if (!place.ok) return place;
  const { room, seat } = place;
  const { name, key, seatKey } = joining;
  const table = await registry.find(room);
  if (table === null) return turnDown('try-later');
  const seated = await table.room.submit({ kind: 'seat-pupil', seat, name, key: seatKey });
  if (!seated.ok) return seated;
  const joined = await live.submit({ kind: 'join', name, key, room, seat });
  return joined.ok ? { ok: true, room, seat } : joined;
}

/** Once a table has been dealt nobody comes to it any more: whoever is late gets another. */
async function freePlace(live: LiveClass, registry: Registry): Promise<Joined> {
  const { state } = live;
  const places = SEATS.slice(0, pupilsAtTable(state));
  for (const room of state.dealt === 0 ? live.rooms() : []) {
    const taken = state.pupils.filter((pupil) => pupil.room === room).map((pupil) => pupil.seat);
    const seat = places.find((one) => !taken.includes(one));
    if (seat !== undefined) return { ok: true, room, seat };
  }
  const { terms, card } = state;
  const opened = await registry.open({
    door: 'class',
    terms: { deadline: terms.deadline, layOpen: false },
    card,
  });
  return opened.ok ? { ok: true, room: opened.live.room.code, seat: 0 } : opened;
}
