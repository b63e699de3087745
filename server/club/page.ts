// What stands on a club's page: the drill that it shows, and the tables that somebody can join (rules CB1 and CB3).
import type { ClubPage } from '../../shared-engine/index.ts';
import type { Clock, Store } from '../ports.ts';
import type { PublishedDrills } from '../published/published-drills.ts';
import { phaseOf } from '../published/state.ts';
import type { ActiveRoom } from '../registry/active-room.ts';
import type { Registry } from '../registry/registry.ts';
import { disconnectedSince, personsOf, type RoomState } from '../room/state.ts';
import type { ActiveClub } from './clubs.ts';

const DAY_MS = 24 * 60 * 60 * 1000;

export interface ClubPagePorts {
  readonly registry: Pick<Registry, 'find'>;
  readonly store: Pick<Store, 'versions'>;
  readonly published: Pick<PublishedDrills, 'find'>;
  readonly clock: Clock;
  /** After how long a table that everybody has left is taken off, in milliseconds. */
  readonly idleMs: number;
  /** Under which phones reach this server; null where nobody has said. */
  readonly publicAddress: string | null;
  /** For how long the page is stored after its last event, in milliseconds. */
  readonly keptMs: number;
}

/** What is read of a page here, and the one thing that is done to it. */
type ShownClub = Pick<ActiveClub, 'code' | 'state' | 'submit'>;

/** Takes tables that are gone or left for good off the page. Rejects when the store cannot be reached. */
export async function clubPageFor(
  live: ShownClub,
  ports: ClubPagePorts,
  isTeacher: boolean,
): Promise<ClubPage> {
  const listed = await listedOn(live, ports);
  const { code, state } = live;
  return {
    code,
    name: state.name,
    drill: await drillOf(state.drill, ports),
    tables: listed.flatMap(({ table }) => (table === null ? [] : [table])),
    listed: isTeacher ? listed.map(({ code, standing }) => ({ code, standing })) : [],
    keptOff: isTeacher ? state.keptOff : [],
    address: ports.publicAddress,
    keptDays: Math.round(ports.keptMs / DAY_MS),
    teacher: isTeacher,
    keys: isTeacher ? state.keys.filter(({ isRevoked }) => !isRevoked).map(({ id, at }) => ({ id, at })) : [],
  };
}

/**
 * The tables that nobody can join just now, full ones first: whoever left one for a moment comes back sooner than a seat
 * becomes free. Rejects when the store cannot be reached.
 */
export async function unjoinableOn(live: ShownClub, ports: ClubPagePorts): Promise<readonly string[]> {
  const listed = await listedOn(live, ports);
  const like = (wanted: Listed['standing']) => listed.filter(({ standing }) => standing === wanted);
  return [...like('full'), ...like('unattended')].map(({ code }) => code);
}

type Listed = ClubPage['listed'][number] & { readonly table: ClubPage['tables'][number] | null };

/** The tables on the page; those that are over are taken off it, and are not among them. */
async function listedOn(live: ShownClub, ports: ClubPagePorts): Promise<readonly Listed[]> {
  const { registry, store, clock, idleMs } = ports;
  const found = await Promise.all(
    live.state.tables.map(async (code) => ({ code, room: await registry.find(code) })),
  );
  const missing = found.filter(({ room }) => room === null).map(({ code }) => code);
  // A server that stops finds no room any more; those that are stored are not gone.
  const stored = missing.length > 0 ? await store.versions(missing) : new Map<string, number>();
  const now = clock.now();
  const isLeft = (state: RoomState): boolean => now - lastSeen(state, now) >= idleMs;
  const over = found.filter(({ code, room }) =>
    room === null ? !stored.has(code) : room.room.state.closed || isLeft(room.room.state),
  );
  if (over.length > 0) {
    // Where that cannot be stored it is done the next time; nobody reads of them meanwhile.
    await live.submit({ kind: 'take-off', tables: over.map(({ code }) => code) });
  }
  return found.flatMap(({ code, room }) =>
    room === null || over.some((one) => one.code === code) ? [] : [standingOf(code, room)],
  );
}

function standingOf(code: string, { room: { state }, card }: ActiveRoom): Listed {
  const free = state.seats.filter(({ kind }) => kind === 'empty').length;
  if (free === 0) return { code, standing: 'full', table: null };
  const isAttended = personsOf(state).some((person) => disconnectedSince(person) === null);
  if (!isAttended) return { code, standing: 'unattended', table: null };
  const { terms, play } = state;
  const table = { code, free, terms, card: card.file.name, round: play?.number ?? 0 };
  return { code, standing: 'open', table };
}

/** When something last happened there, or somebody was last connected. */
function lastSeen(state: RoomState, now: number): number {
  const seen = personsOf(state).map((person) => disconnectedSince(person) ?? now);
  return Math.max(state.at, ...seen);
}

async function drillOf(code: string | null, { published, clock }: ClubPagePorts): Promise<ClubPage['drill']> {
  const drill = code === null ? null : await published.find(code);
  if (code === null || drill === null) return null;
  const { state } = drill;
  const { title, deals } = state.drill;
  return { code, title, state: phaseOf(state, clock.now()), until: state.until, deals: deals.length };
}
