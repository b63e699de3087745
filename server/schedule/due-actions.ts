// What the server itself has to do next in a room, and when: deals, bots' choices, and stand-ins for those away.
import { botPause, pendingDecisionOf, SEATS, type Seat, type StyleName } from '../../shared-engine/index.ts';
import type { Timing } from '../config.ts';
import { FILL_IN_STYLE } from '../room/bot-name.ts';
import type { TablePolicy } from '../room/policy.ts';
import {
  deadlineOf,
  disconnectedSince,
  type ExternalBotSeat,
  isRoundRunning,
  type PersonSeat,
  type Play,
  personsOf,
  type RoomState,
} from '../room/state.ts';
import { isAheadOfClass, isHeld } from '../room/teacher-controls.ts';

export type Action =
  | { readonly kind: 'deal' }
  /** To say that this server watches the clock, before it may act by it (rule K3). */
  | { readonly kind: 'claim-timer' }
  | {
      readonly kind: 'choose';
      readonly seat: Seat;
      readonly by: 'bot' | 'stand-in';
      readonly style: StyleName;
    };

/** Before any time that a clock shows. */
const AT_ONCE = 0;
const NEVER = Number.POSITIVE_INFINITY;

export interface ScheduledAction {
  /** Milliseconds since 1970; may be past. */
  readonly at: number;
  readonly action: Action;
}

/** What is due depends on this besides the room's own state. */
export interface Circumstances {
  readonly node: string;
  readonly policy: TablePolicy;
  readonly timing: Timing;
  /** When the open step was opened, by the clock of this server. */
  readonly stepSince: number;
}

/** The action of this server that comes first, or null when there is nothing to wait for. */
export function nextAction(state: RoomState, circumstances: Circumstances): ScheduledAction | null {
  if (state.closed) return null;
  const timed = state.terms.deadline !== null && isRoundRunning(state);
  if (timed && !state.timerOwners.includes(circumstances.node)) {
    return { at: AT_ONCE, action: { kind: 'claim-timer' } };
  }
  const { play } = state;
  if (play === null || !isRoundRunning(state)) return dealDue(state, circumstances);
  return SEATS.flatMap(
    (seat) => choiceDue(state, play, seat, circumstances) ?? [],
  ).reduce<ScheduledAction | null>((first, due) => (first && first.at <= due.at ? first : due), null);
}

function dealDue(state: RoomState, { policy, timing }: Circumstances): ScheduledAction | null {
  if (policy.deals === 'by-class') return null;
  const persons = personsOf(state);
  if (persons.length === 0) return null;
  const action = { kind: 'deal' } as const;
  if (policy.deals === 'first-at-once' && state.play === null) return { at: AT_ONCE, action };
  if (!persons.some((person) => person.ready && disconnectedSince(person) === null)) return null;
  let at = AT_ONCE;
  for (const person of persons) {
    if (person.ready) continue;
    const since = disconnectedSince(person);
    if (since === null) return null;
    at = Math.max(at, since + timing.nextDealGrace);
  }
  return { at, action };
}

function choiceDue(
  state: RoomState,
  { round }: Play,
  seat: Seat,
  circumstances: Circumstances,
): ScheduledAction | null {
  // A bot that chose now would have to choose again, from other tiles.
  if (pendingDecisionOf(round, seat) === null || isAheadOfClass(round, state.controls)) return null;
  const held = state.seats[seat];
  switch (held.kind) {
    case 'empty':
      return null;
    case 'bot': {
      const at = botDelayEnd(state, seat, circumstances);
      return { at, action: { kind: 'choose', seat, by: 'bot', style: held.style } };
    }
    case 'external-bot':
      return { at: externalBotLimit(state, seat, held, circumstances), action: standInFor(seat) };
    case 'person': {
      if (isHeld(round, state.controls)) return null;
      if (state.controls.standIn.includes(seat)) {
        return { at: botDelayEnd(state, seat, circumstances), action: standInFor(seat) };
      }
      const at = Math.min(
        deadlineOf(state, circumstances.stepSince) ?? NEVER,
        absenceLimit(state, seat, held, circumstances) ?? NEVER,
      );
      return at === NEVER ? null : { at, action: standInFor(seat) };
    }
  }
}

function standInFor(seat: Seat): Action {
  return { kind: 'choose', seat, by: 'stand-in', style: FILL_IN_STYLE };
}

/** For an external bot that is silent too long; for one that is gone, as soon as a bot of the server would choose. */
function externalBotLimit(
  state: RoomState,
  seat: Seat,
  bot: ExternalBotSeat,
  circumstances: Circumstances,
): number {
  if (disconnectedSince(bot) !== null) return botDelayEnd(state, seat, circumstances);
  const { stepSince, timing } = circumstances;
  const deadline = deadlineOf(state, stepSince) ?? Number.POSITIVE_INFINITY;
  return Math.min(stepSince + timing.externalBot, deadline);
}

/** For a person away too long, but only while somebody present waits: no round is played on with nobody there. */
function absenceLimit(
  state: RoomState,
  seat: Seat,
  person: PersonSeat,
  circumstances: Circumstances,
): number | null {
  if (!circumstances.policy.replacesAbsent) return null;
  const since = disconnectedSince(person);
  if (since === null || !personsOf(state).some((other) => disconnectedSince(other) === null)) return null;
  return Math.max(since + circumstances.timing.disconnectGrace, botDelayEnd(state, seat, circumstances));
}

function botDelayEnd({ terms }: RoomState, seat: Seat, { stepSince, timing }: Circumstances): number {
  return stepSince + botPause(terms, seat, timing.botDelay);
}
