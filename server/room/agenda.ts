// What the house itself has to do next in a room, and when: deals, bots, and stand-ins for those who are gone.
import { facingOf, type Round, SEATS, type Seat, type StyleName } from '../../shared-engine/index.ts';
import type { Pace } from '../config.ts';
import { FILL_IN_STYLE } from './bot-name.ts';
import { isAheadOfLine, isHeld } from './lead.ts';
import { goneSince, type PersonChair, type Play, personsOf, type RoomState, roundRuns } from './state.ts';

export type Duty =
  | { readonly kind: 'deal' }
  /** To say that this server watches the clock, before it may act by it (rule K3). */
  | { readonly kind: 'take-in-hand' }
  | {
      readonly kind: 'choose';
      readonly seat: Seat;
      readonly by: 'bot' | 'stand-in';
      readonly style: StyleName;
    };

/** Before any time that a clock shows. */
const AT_ONCE = 0;

export interface Due {
  /** Milliseconds since 1970; may be past. */
  readonly at: number;
  readonly duty: Duty;
}

/** What an agenda depends on besides the room's own state. */
export interface Watch {
  readonly node: string;
  /** When the open step was opened, by the clock of this server. */
  readonly stepSince: number;
}

/** The duty of this server that comes first, or null when the house has nothing to wait for. */
export function nextDue(state: RoomState, { node, stepSince }: Watch, pace: Pace): Due | null {
  if (state.closed) return null;
  const timed = state.terms.deadline !== null && roundRuns(state);
  if (timed && !state.inHandOf.includes(node)) return { at: AT_ONCE, duty: { kind: 'take-in-hand' } };
  const all =
    state.play !== null && roundRuns(state)
      ? SEATS.flatMap((seat) => choiceDue(state, state.play!, seat, stepSince, pace) ?? [])
      : (dealDue(state, pace) ?? []);
  return [all].flat().reduce<Due | null>((first, due) => (first && first.at <= due.at ? first : due), null);
}

function dealDue(state: RoomState, pace: Pace): Due | null {
  if (state.door === 'class') return null;
  const persons = personsOf(state);
  if (persons.length === 0) return null;
  if (state.door === 'alone' && state.play === null) return { at: AT_ONCE, duty: { kind: 'deal' } };
  if (!persons.some((person) => person.ready && goneSince(person) === null)) return null;
  let at = AT_ONCE;
  for (const person of persons) {
    if (person.ready) continue;
    const gone = goneSince(person);
    if (gone === null) return null;
    at = Math.max(at, gone + pace.dealWait);
  }
  return { at, duty: { kind: 'deal' } };
}

function choiceDue(state: RoomState, { round }: Play, seat: Seat, stepSince: number, pace: Pace): Due | null {
  // A bot that chose now would have to choose again, from other tiles.
  if (!isAsked(round, seat) || isAheadOfLine(round, state.lead)) return null;
  const chair = state.chairs[seat];
  switch (chair.kind) {
    case 'empty':
      return null;
    case 'bot':
      return {
        at: thinkUntil(stepSince, seat, pace),
        duty: { kind: 'choose', seat, by: 'bot', style: chair.style },
      };
    case 'person': {
      if (isHeld(round, state.lead)) return null;
      if (state.lead.standIn.includes(seat)) {
        const at = thinkUntil(stepSince, seat, pace);
        return { at, duty: { kind: 'choose', seat, by: 'stand-in', style: FILL_IN_STYLE } };
      }
      const limits = [deadlineOf(state, stepSince), awayLimit(state, chair, stepSince, seat, pace)];
      const at = Math.min(...limits.map((limit) => limit ?? Number.POSITIVE_INFINITY));
      if (at === Number.POSITIVE_INFINITY) return null;
      return { at, duty: { kind: 'choose', seat, by: 'stand-in', style: FILL_IN_STYLE } };
    }
  }
}

/** When the open step ends by the clock (rule K1), or null where there is no deadline. */
export function deadlineOf({ terms, play }: RoomState, stepSince: number): number | null {
  if (terms.deadline === null || play === null || play.round.phase === 'closed') return null;
  return stepSince + (terms.deadline + play.moreTime) * 1000;
}

/** For a person gone too long, but only while somebody present waits: nobody's round is played out behind their back. */
function awayLimit(
  state: RoomState,
  person: PersonChair,
  stepSince: number,
  seat: Seat,
  pace: Pace,
): number | null {
  // The class keeps a pupil's seat for the whole drill.
  if (state.door === 'class') return null;
  const gone = goneSince(person);
  if (gone === null || !personsOf(state).some((other) => goneSince(other) === null)) return null;
  return Math.max(gone + pace.away, thinkUntil(stepSince, seat, pace));
}

/** Bots seal one after the other, as people would. */
function thinkUntil(stepSince: number, seat: Seat, pace: Pace): number {
  return stepSince + Math.round(pace.think * (1 + seat / 4));
}

/** Whether the open step still wants something from this seat. */
function isAsked(round: Round, seat: Seat): boolean {
  const facing = facingOf(round, seat);
  switch (facing.phase) {
    case 'passing':
    case 'voting':
    case 'asking':
      return !facing.answered;
    case 'giving':
      return !facing.answered && facing.count > 0;
    case 'closed':
      return false;
  }
}
