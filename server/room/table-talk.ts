// What friends do before and between the passes: change places, and say one of the table's own sentences.
import {
  type Four,
  isWaitingFor,
  type RoundEvent,
  type Said,
  type Seat,
  type TableAction,
  viewFor,
  withSeat,
} from '../../shared-engine/index.ts';
import { isAllowed, usedOnceMore } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import type { RoomEvent } from './event.ts';
import { MAX_EVENTS_FOR_WORDS, MOVES_MADE, PHRASES_SAID } from './growth.ts';
import { heldAt, type RoomState } from './state.ts';

/** After a deal a place would tell its new holder which tiles lay there (rule V1). */
export function decideSwap(state: RoomState, seat: Seat, other: Seat, at: number): Decision<RoomEvent> {
  if (state.play !== null) return reject('seats-fixed');
  if (seat === other) return accept([]);
  if (heldAt(state, other) !== null && state.host !== seat) return reject('not-the-host');
  return isAllowed(state.moves[seat], MOVES_MADE, at)
    ? accept([{ kind: 'seats-swapped', seat, other }])
    : reject('too-often');
}

/** Whoever is reminded is a person whom the table waits for; to everybody else that would be no reminder. */
export function decideWords(
  state: RoomState,
  seat: Seat,
  { phrase, to }: TableAction & { kind: 'say' },
  at: number,
): Decision<RoomEvent> {
  const isReminder = phrase === 'your-turn';
  if (isReminder !== (to !== null)) return reject('bad-request');
  if (to !== null && (to === seat || !isWaitedFor(state, to))) return accept([]);
  const isSpent = state.seq >= MAX_EVENTS_FOR_WORDS || !isAllowed(state.phrases[seat], PHRASES_SAID, at);
  return isSpent ? reject('too-often') : accept([{ kind: 'said', seat, phrase, to }]);
}

function isWaitedFor({ seats, play }: RoomState, seat: Seat): boolean {
  const held = seats[seat];
  if (held.kind !== 'person') return false;
  if (play === null || play.round.phase === 'closed') return !held.ready;
  return isWaitingFor(viewFor(play.round, { kind: 'spectator' }).stage, seat);
}

export function swapped(
  state: RoomState,
  { seat, other }: RoomEvent & { kind: 'seats-swapped' },
  at: number,
): RoomState {
  const { seats, invitations, host, returns, phrases, moves } = state;
  const exchanged = <T>(values: Four<T>): Four<T> =>
    withSeat(withSeat(values, seat, values[other]), other, values[seat]);
  return {
    ...state,
    seats: exchanged(seats),
    invitations: exchanged(invitations),
    host: host === seat ? other : host === other ? seat : host,
    // What somebody has used up goes along.
    returns: exchanged(returns),
    phrases: exchanged(phrases),
    moves: exchanged(withSeat(moves, seat, usedOnceMore(moves[seat], MOVES_MADE, at))),
    said: [],
  };
}

/** Words go with whoever said them and with whoever they were for: the next one there said and heard nothing. */
export function withoutWordsOf(state: RoomState, seat: Seat): RoomState {
  const said = state.said.filter((one) => one.seat !== seat && one.to !== seat);
  return said.length === state.said.length ? state : { ...state, said };
}

export function withWords(
  state: RoomState,
  { seat, phrase, to }: RoomEvent & { kind: 'said' },
  at: number,
): RoomState {
  const phrases = withSeat(state.phrases, seat, usedOnceMore(state.phrases[seat], PHRASES_SAID, at));
  return {
    ...state,
    phrases,
    said: [...state.said.filter((one) => one.seat !== seat), { seat, phrase, to, nth: state.seq }],
  };
}

/** Words belong to their moment: they hold until the next step is over. */
export function saidAfter({ said }: RoomState, event: RoundEvent): readonly Said[] {
  const isOver = event.kind === 'dealt' || event.kind === 'resolved' || event.kind === 'advanced';
  return isOver && said.length > 0 ? [] : said;
}
