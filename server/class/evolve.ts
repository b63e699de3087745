// Applies an event to a class. Every event of the log is trusted, and none fails.
import { CLASS_LIMITS } from '../../shared-engine/index.ts';
import { UNUSED, usedOnceMore } from '../aggregate/allowance.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import { FORGOTTEN_NAME, NO_SECRET_HASH } from '../room/personal-data.ts';
import type { ClassEvent } from './event.ts';
import { playersSeated } from './seating.ts';
import { AIMS, type ClassState, playersIn, SCREENS } from './state.ts';

/** The class right after its first event; null where that is not its opening. */
export function beginClass({ seq, event }: Recorded<ClassEvent>): ClassState | null {
  if (event.kind !== 'opened') return null;
  const { drill, deals, terms, card, secretHash } = event;
  return {
    seq,
    drill,
    deals,
    terms,
    card,
    secretHash,
    keys: [],
    screen: { codeHash: null, opened: [], used: UNUSED },
    players: [],
    tables: [],
    dealt: 0,
    outcomes: [],
    dealClosed: false,
    outcomesBefore: [],
    holdBefore: null,
    shown: null,
    aims: [],
    joiningOpen: true,
    takeHome: terms.takeHome === true,
    wasTakenHome: terms.takeHome === true,
    cohorts: [],
    frozen: [],
    analyzed: {},
    rounds: [],
    ended: false,
  };
}

/** A player who joins after everybody has finished the current deal begins with the next one. */
function firstDeal({ dealt, dealClosed }: ClassState): number {
  return dealClosed ? dealt : Math.max(0, dealt - 1);
}

function withTable(tables: readonly string[], room: string): readonly string[] {
  return tables.includes(room) ? tables : [...tables, room];
}

export function evolveClass(before: ClassState, { seq, at, event }: Recorded<ClassEvent>): ClassState {
  const state: ClassState = { ...before, seq };
  switch (event.kind) {
    case 'opened':
      return state;
    case 'joined': {
      const { name, secretHash, room, seat, first = firstDeal(state) } = event;
      const id = state.players.length;
      const present = { standIn: false, left: false, removed: false, replaced: false };
      const fresh = { ...present, first, aimsUsed: UNUSED, seatedAs: name };
      const before = state.players.map((one) =>
        one.room === room && one.seat === seat ? { ...one, replaced: true } : one,
      );
      return {
        ...state,
        players: [...before, { id, name, secretHash, room, seat, ...fresh }],
        tables: withTable(state.tables, room),
      };
    }
    case 'renamed': {
      const { player, name } = event;
      return { ...state, players: state.players.map((one) => (one.id === player ? { ...one, name } : one)) };
    }
    case 'seated':
      return {
        ...state,
        players: playersSeated(state.players, event),
        tables: withTable(state.tables, event.room),
      };
    case 'dealt': {
      const { dealt, outcomes, outcomesBefore } = state;
      return {
        ...state,
        dealt: dealt + 1,
        outcomes: [],
        dealClosed: false,
        outcomesBefore: dealt === 0 ? [] : [...outcomesBefore, outcomes],
        cohorts: [...state.cohorts, playersIn(state).map(({ id }) => id)],
        shown: null,
      };
    }
    case 'hold':
      return { ...state, holdBefore: event.before };
    case 'stand-in': {
      const { player, on } = event;
      return {
        ...state,
        players: state.players.map((one) => (one.id === player ? { ...one, standIn: on } : one)),
      };
    }
    case 'shown':
      return { ...state, shown: event.shown };
    case 'advanced':
      return { ...state, outcomes: [...state.outcomes, event.outcome], dealClosed: event.closed };
    case 'aimed': {
      const { player, deal, step, sections } = event;
      const others = state.aims.filter(
        (aim) => aim.player !== player || aim.deal !== deal || aim.step !== step,
      );
      const players = state.players.map((one) =>
        one.id === player ? { ...one, aimsUsed: usedOnceMore(one.aimsUsed, AIMS, at) } : one,
      );
      return { ...state, players, aims: [...others, { player, deal, step, sections }] };
    }
    case 'removed': {
      const gone = { left: true, removed: true, standIn: false };
      return {
        ...state,
        players: state.players.map((one) => (one.id === event.player ? { ...one, ...gone } : one)),
      };
    }
    case 'joining':
      return { ...state, joiningOpen: event.open };
    case 'take-home':
      return { ...state, takeHome: event.on, wasTakenHome: state.wasTakenHome || event.on };
    case 'frozen': {
      const { deal, seat, step, spreads } = event;
      return { ...state, frozen: [...state.frozen, { deal, seat, step, spreads }] };
    }
    case 'analyzed': {
      const { choices, rounds } = event;
      // What was stored first stands.
      const analyzed = { ...choices, ...state.analyzed };
      return { ...state, analyzed, rounds: [...state.rounds, ...rounds] };
    }
    case 'key-made': {
      const { secretHash } = event;
      const key = { id: state.keys.length, secretHash, at, isRevoked: false };
      return { ...state, keys: [...state.keys, key] };
    }
    case 'key-revoked':
      return {
        ...state,
        keys: state.keys.map((one) => (one.id === event.key ? { ...one, isRevoked: true } : one)),
      };
    case 'screen-code':
      return { ...state, screen: { ...state.screen, codeHash: event.codeHash, opened: [] } };
    case 'screen-opened': {
      const { screen } = state;
      // A computer that has not come back for long makes room.
      const opened = [...screen.opened, event.secretHash].slice(-CLASS_LIMITS.screens);
      return { ...state, screen: { ...screen, opened, used: usedOnceMore(screen.used, SCREENS, at) } };
    }
    case 'left': {
      const nobody = { name: FORGOTTEN_NAME, seatedAs: FORGOTTEN_NAME, secretHash: NO_SECRET_HASH };
      const gone = { ...nobody, left: true, removed: false, standIn: false };
      return {
        ...state,
        players: state.players.map((one) => (one.id === event.player ? { ...one, ...gone } : one)),
        aims: state.aims.filter(({ player }) => player !== event.player),
      };
    }
    case 'ended':
      return { ...state, ended: true };
  }
}
