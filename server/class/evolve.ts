// (class, event) → the next class; total and silent, it believes every event of the log.
import type { Logged } from '../room/event.ts';
import { FORGOTTEN_NAME, NO_KEY } from '../room/mine.ts';
import type { ClassEvent } from './event.ts';
import type { ClassState } from './state.ts';

/** The class that a log describes, or null when the log is that of a room. */
export function replayClass(log: readonly Logged[]): ClassState | null {
  const [first, ...rest] = log;
  if (first?.event.kind !== 'class' || first.event.event.kind !== 'opened') return null;
  const { drill, deals, terms, card, key } = first.event.event;
  const opened: ClassState = {
    seq: first.seq,
    drill,
    deals,
    terms,
    card,
    key,
    pupils: [],
    dealt: 0,
    line: [],
    lineClosed: false,
    linesBefore: [],
    holdBefore: null,
    shown: null,
    aims: [],
    ended: false,
  };
  return rest.reduce(evolveLogged, opened);
}

export function evolveLogged(state: ClassState, { seq, event }: Logged): ClassState {
  return event.kind === 'class' ? { ...evolveClass(state, event.event), seq } : state;
}

/** Whoever comes when the deal on the desk is played out for everybody begins with the next one. */
function firstDeal({ dealt, lineClosed }: ClassState): number {
  return lineClosed ? dealt : Math.max(0, dealt - 1);
}

function evolveClass(state: ClassState, event: ClassEvent): ClassState {
  switch (event.kind) {
    case 'opened':
      return state;
    case 'joined': {
      const { name, key, room, seat } = event;
      const id = state.pupils.length;
      const pupil = { id, name, key, room, seat, standIn: false, left: false, first: firstDeal(state) };
      return { ...state, pupils: [...state.pupils, pupil] };
    }
    case 'dealt': {
      const { dealt, line, linesBefore } = state;
      const before = dealt === 0 ? [] : [...linesBefore, line];
      return { ...state, dealt: dealt + 1, line: [], lineClosed: false, linesBefore: before, shown: null };
    }
    case 'hold':
      return { ...state, holdBefore: event.before };
    case 'stand-in': {
      const { pupil, on } = event;
      return {
        ...state,
        pupils: state.pupils.map((one) => (one.id === pupil ? { ...one, standIn: on } : one)),
      };
    }
    case 'shown':
      return { ...state, shown: event.choice };
    case 'gone-on':
      return { ...state, line: [...state.line, event.outcome], lineClosed: event.closed };
    case 'aimed': {
      const { pupil, deal, step, families } = event;
      const others = state.aims.filter(
        (aim) => aim.pupil !== pupil || aim.deal !== deal || aim.step !== step,
      );
      return { ...state, aims: [...others, { pupil, deal, step, families }] };
    }
    case 'left': {
      const gone = { name: FORGOTTEN_NAME, key: NO_KEY, left: true, standIn: false };
      return {
        ...state,
        pupils: state.pupils.map((one) => (one.id === event.pupil ? { ...one, ...gone } : one)),
        aims: state.aims.filter(({ pupil }) => pupil !== event.pupil),
      };
    }
    case 'ended':
      return { ...state, ended: true };
  }
}
