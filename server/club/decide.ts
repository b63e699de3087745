// Decides what may happen to a club's page: a command causes events, or one rejection.
import { CLUB_LIMITS } from '../../shared-engine/index.ts';
import { isAllowed } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { decideKey, type KeyCommand } from '../published/keys.ts';
import { CHANGES, type ClubEvent, type ClubState, LISTINGS } from './state.ts';

export type ClubCommand =
  | { readonly kind: 'rename'; readonly name: string }
  /** Code of a published drill that there is; null for none. */
  | { readonly kind: 'show-drill'; readonly code: string | null }
  /** The host of the table asks. One of `unjoinable` gives its place up where the page has no other. */
  | { readonly kind: 'list'; readonly table: string; readonly unjoinable: readonly string[] }
  | { readonly kind: 'take-off'; readonly tables: readonly string[] }
  /** A teacher asks, after which the table's host cannot put it there; until a teacher lets it back. */
  | { readonly kind: 'keep-off'; readonly table: string }
  | { readonly kind: 'let-back'; readonly table: string }
  | KeyCommand;

/** `at` is the time of the events, in milliseconds since 1970. */
export function decideClub(state: ClubState, command: ClubCommand, at: number): Decision<ClubEvent> {
  switch (command.kind) {
    case 'rename': {
      const { name } = command;
      return name === state.name ? accept([]) : changed(state, { kind: 'club-renamed', name }, at);
    }
    case 'show-drill': {
      const { code } = command;
      return code === state.drill ? accept([]) : changed(state, { kind: 'drill-shown', code }, at);
    }
    case 'list': {
      const { table, unjoinable } = command;
      if (state.tables.includes(table)) return accept([]);
      if (state.keptOff.includes(table)) return reject('kept-off');
      const hasPlace = state.tables.length < CLUB_LIMITS.tables;
      const gone = hasPlace ? undefined : unjoinable.find((one) => state.tables.includes(one));
      if (!hasPlace && gone === undefined) return reject('club-full');
      if (!isAllowed(state.listings, LISTINGS, at)) return reject('listed-often');
      const listed = { kind: 'table-listed', table } as const;
      return accept(gone === undefined ? [listed] : [{ kind: 'tables-taken-off', tables: [gone] }, listed]);
    }
    case 'take-off': {
      // Each was put there once, which is what is limited.
      const tables = command.tables.filter((table) => state.tables.includes(table));
      return accept(tables.length === 0 ? [] : [{ kind: 'tables-taken-off', tables }]);
    }
    case 'keep-off': {
      const { table } = command;
      return accept(state.tables.includes(table) ? [{ kind: 'table-kept-off', table }] : []);
    }
    case 'let-back': {
      const { table } = command;
      return accept(state.keptOff.includes(table) ? [{ kind: 'table-let-back', table }] : []);
    }
    case 'make-key':
    case 'revoke-key':
      return decideKey(state.keys, command);
  }
}

function changed(state: ClubState, event: ClubEvent, at: number): Decision<ClubEvent> {
  return isAllowed(state.changes, CHANGES, at) ? accept([event]) : reject('too-often');
}
