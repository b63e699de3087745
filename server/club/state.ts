// A club's page as its log determines it: everything that can happen to it, and what follows.
import { CLUB_LIMITS } from '../../shared-engine/index.ts';
import { type Allowance, UNUSED, type Used, usedOnceMore } from '../aggregate/allowance.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import type { TeacherKey } from '../class/state.ts';
import { type KeyEvent, keysAfter } from '../published/keys.ts';

export type ClubEvent =
  /** Always the first event; `secretHash` is of the secret of whoever made the page. */
  | { readonly kind: 'club-made'; readonly name: string; readonly secretHash: string }
  | { readonly kind: 'club-renamed'; readonly name: string }
  /** Code of the published drill that the page shows from now on; null for none. */
  | { readonly kind: 'drill-shown'; readonly code: string | null }
  | { readonly kind: 'table-listed'; readonly table: string }
  | { readonly kind: 'tables-taken-off'; readonly tables: readonly string[] }
  | { readonly kind: 'table-kept-off'; readonly table: string }
  | { readonly kind: 'table-let-back'; readonly table: string }
  | KeyEvent;

export interface ClubState {
  /** Number of the last event. */
  readonly seq: number;
  readonly name: string;
  readonly secretHash: string;
  readonly keys: readonly TeacherKey[];
  readonly drill: string | null;
  /** Codes of the tables, the one put there first at the front. */
  readonly tables: readonly string[];
  /** Codes of those that a teacher has taken off, the last one at the front; the one taken off first is forgotten first. */
  readonly keptOff: readonly string[];
  /** Of how often a table may be put there. */
  readonly listings: Used;
  /** Of how often a teacher may change the page. */
  readonly changes: Used;
}

/** How often tables are put on a page, and a teacher changes it: each stays in the log. */
export const LISTINGS: Allowance = { atOnce: 120, everyMs: 60_000 };
export const CHANGES: Allowance = { atOnce: 60, everyMs: 60_000 };

/** The page right after its first event; null where that is another one. */
export function beginClub({ seq, event }: Recorded<ClubEvent>): ClubState | null {
  if (event.kind !== 'club-made') return null;
  const { name, secretHash } = event;
  const nothing = { keys: [], drill: null, tables: [], keptOff: [], listings: UNUSED, changes: UNUSED };
  return { seq, name, secretHash, ...nothing };
}

/** Every event of the log is trusted, and none fails. */
export function evolveClub(before: ClubState, { seq, at, event }: Recorded<ClubEvent>): ClubState {
  const state: ClubState = { ...before, seq };
  const changes = usedOnceMore(state.changes, CHANGES, at);
  switch (event.kind) {
    case 'club-made':
      return state;
    case 'club-renamed':
      return { ...state, name: event.name, changes };
    case 'drill-shown':
      return { ...state, drill: event.code, changes };
    case 'table-listed': {
      const tables = [...state.tables, event.table];
      return { ...state, tables, listings: usedOnceMore(state.listings, LISTINGS, at) };
    }
    case 'tables-taken-off':
      return { ...state, tables: state.tables.filter((table) => !event.tables.includes(table)) };
    case 'table-kept-off': {
      const { table } = event;
      const keptOff = [table, ...state.keptOff].slice(0, CLUB_LIMITS.keptOff);
      return { ...state, tables: state.tables.filter((one) => one !== table), keptOff };
    }
    case 'table-let-back':
      return { ...state, keptOff: state.keptOff.filter((table) => table !== event.table) };
    case 'key-made':
    case 'key-revoked':
      return { ...state, keys: keysAfter(state.keys, event, at) };
  }
}
