// Makes the people at a table of a class those whom the class has there, under the names that it knows.
import { SEATS } from '../../shared-engine/index.ts';
import type { Store } from '../ports.ts';
import { forgetPerson } from '../room/personal-data.ts';
import { arePlacesOpen } from './seating.ts';
import { type ClassPlayer, type ClassState, playersIn } from './state.ts';
import type { ClassTable } from './tables.ts';

export interface Placing {
  readonly state: ClassState;
  /** Whether the player has given the seat up, or is being removed. */
  isGoing(player: ClassPlayer): boolean;
  readonly store: Pick<Store, 'history' | 'rewrite'>;
}

/**
 * Makes the people at a table those whom the class has there, by name: names of a class are all different. Whoever was
 * put elsewhere is forgotten here; whoever was put here has the secret of the class for the seat until the page asks.
 */
export async function seatAsPlaced(
  { live: { room } }: ClassTable,
  { state, isGoing, store }: Placing,
): Promise<boolean> {
  const players = playersIn(state).filter((one) => !isGoing(one));
  const isOpen = arePlacesOpen(state) && room.state.play === null;
  for (const seat of SEATS) {
    const wanted = players.find((one) => one.room === room.code && one.seat === seat);
    const held = room.state.seats[seat];
    const name = held.kind === 'person' ? held.name : null;
    if (name === (wanted?.name ?? null)) continue;
    const holder = name === null ? undefined : players.find((one) => isCalled(one, name));
    // Somebody who is joining has sat down and is not in the class yet.
    if (holder === undefined && name !== null && wanted === undefined) continue;
    const isOther = isOpen && held.kind === 'person' && holder !== undefined && holder !== wanted;
    if (isOther) {
      const left = await room.submit({ kind: 'vacate-seat', seat });
      if (!left.ok) return false;
      await forgetPerson(store, room.code, { seat, since: held.since });
    }
    if (wanted === undefined) continue;
    const answer =
      name !== null && !isOther
        ? await room.submit({ kind: 'rename-seat', seat, name: wanted.name })
        : isOpen
          ? await room.submit({ kind: 'seat-player', seat, name: wanted.name, secretHash: wanted.secretHash })
          : ({ ok: true } as const);
    if (!answer.ok) return false;
  }
  return true;
}

function isCalled({ name, seatedAs }: ClassPlayer, called: string): boolean {
  return name === called || seatedAs === called;
}
