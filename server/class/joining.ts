// How a player joins a class: a free place at a table, or a table of one's own, and a secret for it.
import { SEATS, type Seat } from '../../shared-engine/index.ts';
import { type Rejection, reject } from '../aggregate/decision.ts';
import type { Registry } from '../registry/registry.ts';
import { distinctName } from '../room/name.ts';
import type { ActiveClass } from './active-class.ts';
import { joiningRejection } from './decide.ts';
import { type ClassPlayer, classTableTerms, playersAtTable, playersIn } from './state.ts';
import { dealBehindTakenHome } from './take-home.ts';

export interface Joining {
  readonly name: string;
  /** Hashes of the secrets for the class and for the seat at the table. */
  readonly secretHash: string;
  readonly seatSecretHash: string;
  /** The address of whoever joins, as the limits count it. */
  readonly from: string;
}

type Place = Pick<ClassPlayer, 'room' | 'seat'>;

export type Joined = { readonly ok: true; readonly room: string; readonly seat: Seat } | Rejection;

export function join(live: ActiveClass, registry: Registry, joining: Joining): Promise<Joined> {
  return live.joins.run(() => admit(live, registry, joining));
}

/** Another server may give the same place away at the same moment; then the next free one is tried. */
const MAX_ATTEMPTS = 4;

async function admit(live: ActiveClass, registry: Registry, joining: Joining): Promise<Joined> {
  const rejection = joiningRejection(live.state);
  if (rejection !== null) return reject(rejection);
  const { secretHash, seatSecretHash, from } = joining;
  const name = distinctName(
    joining.name,
    playersIn(live.state).map((player) => player.name),
  );
  const given: Place[] = [];
  for (let attempt = 0; attempt < MAX_ATTEMPTS; attempt++) {
    const place = freePlace(live, given) ?? (await newTable(live, registry, from));
    if (!place.ok) return place;
    const { room, seat } = place;
    const table = await registry.find(room);
    if (table === null) return reject('try-later');
    const seated = await table.room.submit({ kind: 'seat-player', seat, name, secretHash: seatSecretHash });
    if (!seated.ok && seated.code === 'seat-taken') {
      given.push(place);
      continue;
    }
    if (!seated.ok) return seated;
    const first = dealBehindTakenHome(live);
    const command = { kind: 'join', name, secretHash, room, seat } as const;
    const joined = await live.submit(first === null ? command : { ...command, first });
    return joined.ok ? { ok: true, room, seat } : joined;
  }
  return reject('try-later');
}

/** Nobody joins a table after its first deal: a late player gets another table. `given`: places that are not free. */
function freePlace(live: ActiveClass, given: readonly Place[]): Joined | null {
  const { state } = live;
  const places = SEATS.slice(0, playersAtTable(state));
  for (const room of state.dealt === 0 ? live.rooms() : []) {
    const taken = [...playersIn(state), ...given]
      .filter((place) => place.room === room)
      .map((place) => place.seat);
    const seat = places.find((one) => !taken.includes(one));
    if (seat !== undefined) return { ok: true, room, seat };
  }
  return null;
}

export async function newTable(
  { state, code }: ActiveClass,
  registry: Registry,
  from: string,
): Promise<Joined> {
  const opened = await registry.open(
    {
      mode: 'class',
      terms: classTableTerms(state),
      card: state.card,
      classCode: code,
      isKeptWithClass: !state.terms.amongFriends,
      host: null,
    },
    from,
  );
  return opened.ok ? { ok: true, room: opened.live.room.code, seat: 0 } : opened;
}
