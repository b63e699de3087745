// What stands on a club's page: the drill that it shows, and the tables that somebody can join (rules CB1 and CB3).
import type { ClubPage } from '../../shared-engine/index.ts';
import type { Clock } from '../ports.ts';
import type { PublishedDrills } from '../published/published-drills.ts';
import { phaseOf } from '../published/state.ts';
import type { Registry } from '../registry/registry.ts';
import { disconnectedSince, personsOf, type RoomState } from '../room/state.ts';
import type { ActiveClub } from './clubs.ts';

const DAY_MS = 24 * 60 * 60 * 1000;

export interface ClubPagePorts {
  readonly registry: Pick<Registry, 'find'>;
  readonly published: Pick<PublishedDrills, 'find'>;
  readonly clock: Clock;
  /** After how long a table that everybody has left is taken off, in milliseconds. */
  readonly idleMs: number;
  /** Under which phones reach this server; null where nobody has said. */
  readonly publicAddress: string | null;
  /** For how long the page is stored after its last event, in milliseconds. */
  readonly keptMs: number;
}

/** Takes tables that are gone or left for good off the page. Rejects when the store cannot be reached. */
export async function clubPageFor(
  live: ActiveClub,
  ports: ClubPagePorts,
  isTeacher: boolean,
): Promise<ClubPage> {
  const tables = await tablesOf(live, ports);
  const { code, state } = live;
  return {
    code,
    name: state.name,
    drill: await drillOf(state.drill, ports),
    tables,
    address: ports.publicAddress,
    keptDays: Math.round(ports.keptMs / DAY_MS),
    teacher: isTeacher,
    keys: isTeacher ? state.keys.filter(({ isRevoked }) => !isRevoked).map(({ id, at }) => ({ id, at })) : [],
  };
}

async function tablesOf(live: ActiveClub, { registry, clock, idleMs }: ClubPagePorts) {
  const found = await Promise.all(
    live.state.tables.map(async (code) => ({ code, room: await registry.find(code) })),
  );
  const now = clock.now();
  const isLeft = (state: RoomState): boolean => now - lastSeen(state, now) >= idleMs;
  const over = found.filter(({ room }) => room === null || room.room.state.closed || isLeft(room.room.state));
  if (over.length > 0) {
    // Where that cannot be stored it is done the next time; nobody reads of them meanwhile.
    await live.submit({ kind: 'take-off', tables: over.map(({ code }) => code) });
  }
  return found.flatMap(({ code, room }): ClubPage['tables'][number][] => {
    if (room === null || over.some((one) => one.code === code)) return [];
    const { state } = room.room;
    const free = state.seats.filter(({ kind }) => kind === 'empty').length;
    const isAttended = personsOf(state).some((person) => disconnectedSince(person) === null);
    if (free === 0 || !isAttended) return [];
    const { terms, play } = state;
    return [{ code, free, terms, card: room.card.file.name, round: play?.number ?? 0 }];
  });
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
