// (class, command) → the events it causes, or one refusal; nothing else decides what may happen in a class.
import {
  CLASS_LIMITS,
  type ClassAims,
  type Seat,
  type Settled,
  type Step,
  type WallChoice,
} from '../../shared-engine/index.ts';
import { type Refusal, turnDown } from '../room/decision.ts';
import type { ClassEvent } from './event.ts';
import { type ClassState, playsOneLine } from './state.ts';

export type ClassCommand =
  | {
      readonly kind: 'join';
      readonly name: string;
      readonly key: string;
      readonly room: string;
      readonly seat: Seat;
    }
  | { readonly kind: 'deal-next' }
  | { readonly kind: 'hold'; readonly before: Step | null }
  | { readonly kind: 'stand-in'; readonly pupil: number; readonly on: boolean }
  | { readonly kind: 'show'; readonly choice: WallChoice | null }
  /** `deal` is the place in the drill of the deal on the pupil's table. */
  | {
      readonly kind: 'aim';
      readonly pupil: number;
      readonly deal: number;
      readonly aims: ClassAims;
    }
  /** `deal` and `place` say which step of the drill's line this is. */
  | {
      readonly kind: 'go-on';
      readonly deal: number;
      readonly place: number;
      readonly outcome: Settled;
      readonly closed: boolean;
    }
  | { readonly kind: 'leave'; readonly pupil: number }
  | { readonly kind: 'end' };

export type ClassDecision = { readonly ok: true; readonly events: readonly ClassEvent[] } | Refusal;

export function decideClass(state: ClassState, command: ClassCommand): ClassDecision {
  // What is kept can be forgotten after the end too.
  if (command.kind === 'leave') return decideLeaving(state, command.pupil);
  if (state.ended) return command.kind === 'end' ? accept() : turnDown('class-over');
  switch (command.kind) {
    case 'join': {
      const { name, key, room, seat } = command;
      if (state.pupils.length >= CLASS_LIMITS.pupils) return turnDown('class-full');
      if (state.pupils.some((pupil) => pupil.room === room && pupil.seat === seat))
        return turnDown('seat-taken');
      return accept({ kind: 'joined', name, key, room, seat });
    }
    case 'deal-next':
      if (playsOneLine(state) && state.dealt > 0 && !state.lineClosed) return turnDown('line-open');
      return state.dealt < state.deals.length ? accept({ kind: 'dealt' }) : turnDown('no-more-deals');
    case 'hold':
      return state.holdBefore === command.before
        ? accept()
        : accept({ kind: 'hold', before: command.before });
    case 'stand-in': {
      const { pupil, on } = command;
      const one = state.pupils[pupil];
      if (!one || one.left) return turnDown('no-such-pupil');
      return one.standIn === on ? accept() : accept({ kind: 'stand-in', pupil, on });
    }
    case 'show':
      return accept({ kind: 'shown', choice: command.choice });
    case 'aim':
      return decideAim(state, command);
    case 'go-on': {
      const { deal, place, outcome, closed } = command;
      const stands = deal === state.dealt - 1 && place === state.line.length && !state.lineClosed;
      return stands ? accept({ kind: 'gone-on', outcome, closed }) : turnDown('line-moved');
    }
    case 'end':
      return accept({ kind: 'ended' });
  }
}

function decideLeaving({ pupils }: ClassState, pupil: number): ClassDecision {
  const one = pupils[pupil];
  if (!one) return turnDown('no-such-pupil');
  return one.left ? accept() : accept({ kind: 'left', pupil });
}

/** What is named later for the same step takes the place of what was named before. */
function decideAim(state: ClassState, { pupil, deal, aims }: ClassCommand & { kind: 'aim' }): ClassDecision {
  if (deal < 0 || deal >= state.dealt) return turnDown('no-round');
  const { step, families } = aims;
  return accept({ kind: 'aimed', pupil, deal, step, families });
}

function accept(...events: readonly ClassEvent[]): ClassDecision {
  return { ok: true, events };
}
