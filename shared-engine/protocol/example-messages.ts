// One example of each message of the socket, made by the rules from a fixed seed; the protocol's documents show them.
import {
  begin,
  decide,
  evolve,
  forFour,
  openRound,
  type Round,
  roundIdOf,
  type SeatView,
  STANDARD_TERMS,
  seatView,
  viewDelta,
} from '../rules/index.ts';
import type { ClientMessage, ServerMessage } from './messages.ts';
import { ROOM_REJECTIONS } from './rejections.ts';
import type { Table } from './table.ts';

const CODE = 'EXAMPLE2';
const SEAT = 2;
const TERMS = { ...STANDARD_TERMS.friends, deadline: 60 };

/** By kind; a review has none, because it is as long as all others together. */
export function exampleMessages(): Readonly<Record<string, readonly (ClientMessage | ServerMessage)[]>> {
  const dealt = begin(openRound({ seed: '2'.repeat(64), dealer: 0 }, TERMS, roundIdOf(CODE, 1)));
  const choice = firstPass(seatView(dealt, SEAT));
  const passed = withChoice(dealt, choice);
  const change = viewDelta(dealt, passed, { kind: 'seat', seat: SEAT });
  return {
    hello: [
      { kind: 'hello', id: 'h1', versions: [1, 1], ticket: 'T'.repeat(43) },
      {
        kind: 'hello',
        id: 'h2',
        versions: [1, 1],
        ticket: 'T'.repeat(43),
        resume: { seq: 9, you: SEAT },
        from: { page: 'p1', nth: 1 },
      },
    ],
    choose: [
      { kind: 'choose', id: 'c1', round: 1, seat: SEAT, choice },
      { kind: 'choose', id: 'c2', round: 1, seat: SEAT, choice: { kind: 'withdraw', step: 'first-right' } },
      { kind: 'choose', id: 'c3', round: 1, seat: SEAT, choice: { kind: 'vote', step: 'vote', go: true } },
      {
        kind: 'choose',
        id: 'c4',
        round: 1,
        seat: SEAT,
        choice: { kind: 'ask', step: 'courtesy-ask', count: 2 },
      },
    ],
    action: [
      { kind: 'action', id: 'a1', action: { kind: 'ready', ready: true } },
      { kind: 'action', id: 'a2', action: { kind: 'seat-bot', seat: 3, style: 'typical' } },
    ],
    'analyzed-by': [{ kind: 'analyzed-by', id: 'o1', round: 1, by: 'page' }],
    welcome: [{ kind: 'welcome', id: 'h1', version: 1 }],
    ack: [{ kind: 'ack', id: 'c1' }],
    rejected: [{ kind: 'rejected', id: 'c1', code: 'wrong-round', message: ROOM_REJECTIONS['wrong-round'] }],
    table: [{ kind: 'table', seq: 9, table: tableAt(dealt) }],
    delta: change
      ? [{ kind: 'delta', after: 9, seq: 10, table: { remaining: 52_000, viewDelta: change } }]
      : [],
    storage: [{ kind: 'storage', writable: false }],
    'old-secret-shown': [{ kind: 'old-secret-shown' }],
    heartbeat: [{ kind: 'heartbeat' }],
  };
}

/** Three tiles of the rack that may be passed. */
function firstPass({ rack }: SeatView) {
  const tiles = rack.filter((face) => face !== 'joker').slice(0, 3);
  return { kind: 'pass', step: 'first-right', tiles, blind: 0 } as const;
}

function withChoice(round: Round, choice: ReturnType<typeof firstPass>): Round {
  const decision = decide(round, { ...choice, seat: SEAT, by: 'bot' });
  return decision.ok ? decision.events.reduce(evolve, round) : round;
}

function tableAt(round: Round): Table {
  const bot = { kind: 'bot', name: 'Odo', style: 'typical' } as const;
  const host = { kind: 'person', name: 'Ines', present: true, ready: false, host: true } as const;
  const external = { by: 'Ines', present: true };
  return {
    code: CODE,
    you: SEAT,
    seats: forFour((seat) => (seat === 0 ? host : seat === SEAT ? { ...bot, name: 'Rote', external } : bot)),
    mode: 'friends',
    terms: TERMS,
    card: { id: 'house', name: 'House card' },
    round: 1,
    remaining: 60_000,
    view: seatView(round, SEAT),
  };
}
