// The text of deltas against their object form: the same bytes for every audience, and room for any other secrets.
import { describe, expect, test } from 'vitest';
import { CLASS_TABLE } from '../../server/class/table-policy.ts';
import type { TableFacts } from '../../server/delivery/audience.ts';
import { deltaBetween, type Moment } from '../../server/delivery/delta.ts';
import { DeltaTexts } from '../../server/delivery/delta-text.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { beginRoom, evolveRoom } from '../../server/room/evolve.ts';
import { FRIENDS_TABLE } from '../../server/room/policy.ts';
import { heldAt, type RoomState } from '../../server/room/state.ts';
import type { TableDelta } from '../../shared-engine/protocol/table.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { decide, openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { pendingDecisionOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { STANDARD_TERMS, type Terms } from '../../shared-engine/rules/exchange/terms.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import { anyChoice, seedNamed } from '../kit/rounds.ts';

const WIDEST = 'x'.repeat(Math.max(...FACES.map((face) => face.length)));

/** Two rounds of a room as its log tells them, with everything in between that tables are told of. */
function evening(name: string, terms: Terms): RoomState[] {
  const random = stream(name, 'evening');
  const opened: RoomEvent = {
    kind: 'opened',
    mode: 'friends',
    terms,
    card: { kind: 'house' },
    classCode: null,
  };
  const states = [beginRoom({ seq: 1, at: 1, event: opened })!];
  const happens = (event: RoomEvent) => {
    const { seq, at } = states.at(-1)!;
    states.push(evolveRoom(states.at(-1)!, { seq: seq + 1, at: at + 1, event }));
  };
  for (const seat of SEATS.slice(0, 3))
    happens({ kind: 'seat-taken', seat, name: `N "${seat}"`, secretHash: '' });
  happens({ kind: 'bot-seated', seat: 3, name: 'Odo', style: 'typical' });
  for (const nth of [1, 2]) {
    const deal = { seed: seedNamed(`${name} ${nth}`), dealer: SEATS[nth]! };
    happens({ kind: 'round', event: openRound(deal, terms, `${name}/${nth}`) });
    for (;;) {
      const { round } = states.at(-1)!.play!;
      const seats = SEATS.filter((seat) => pendingDecisionOf(round, seat) !== null);
      if (round.phase === 'closed' || seats.length === 0) break;
      const seat = seats[random.below(seats.length)]!;
      if (random.below(4) === 0) happens(besides(random, seat));
      const decision = decide(round, { ...anyChoice(round, seat, random), seat, by: 'player' });
      if (!decision.ok) throw new Error(decision.code);
      for (const event of decision.events) happens({ kind: 'round', event });
    }
  }
  return states;
}

function besides(random: Random, seat: Seat): RoomEvent {
  const all: readonly RoomEvent[] = [
    { kind: 'said', seat, phrase: 'one-moment', to: null },
    { kind: 'connected', seat: 0, node: 'n', connection: 'n.1' },
    { kind: 'terms-changed', terms: { ...STANDARD_TERMS.friends, deadline: 60 } },
    { kind: 'controls-changed', controls: { holdBefore: null, standIn: [seat], coach: true } },
  ];
  return all[random.below(all.length)]!;
}

/** Everybody who may listen, as the room knows them at this moment. */
function audiences(state: RoomState): Moment[] {
  const seated = SEATS.flatMap((seat): Moment[] => {
    const held = heldAt(state, seat);
    return held ? [{ state, listening: { seat, held } }] : [];
  });
  return [...seated, { state, listening: null }];
}

/** The same delta with the longest secrets that it could hold: how many tiles there are is public, which ones is not. */
function widest(table: TableDelta): TableDelta {
  const secret = new Set(['rack', 'start', 'gave', 'received']);
  const answer = { kind: 'pass', tiles: [WIDEST, WIDEST, WIDEST], blind: 0 };
  const isSeats = (table.view ?? table.viewDelta)?.audience === 'seat';
  return JSON.parse(JSON.stringify(table), (key, value) => {
    if (key === 'answer' && isSeats) return answer;
    // What is opened at the close has a list for each seat, and is public.
    return secret.has(key) && !Array.isArray(value[0]) ? value.map(() => WIDEST) : value;
  });
}

describe.each([
  ['friends', FRIENDS_TABLE, STANDARD_TERMS.friends],
  [
    'friends whose racks are shown at the close',
    FRIENDS_TABLE,
    { ...STANDARD_TERMS.friends, revealRacks: true },
  ],
  ['a class', CLASS_TABLE, STANDARD_TERMS.class],
])('at a table of %s', (name, policy, terms) => {
  test('DL3 DL8 the text of a delta is what JSON makes of its object, with room for the longest secrets', () => {
    const states = evening(name, terms);
    let compared = 0;
    for (const [n, now] of states.entries()) {
      const facts: TableFacts = {
        code: 'ABCDEFGH',
        policy,
        card: { id: 'house', name: 'House' },
        absentMs: n % 2 === 0 ? 1000 : null,
        stepSince: 0,
        now: n,
      };
      for (const before of states.slice(Math.max(0, n - 4), n)) {
        const texts = new DeltaTexts(before, now, facts);
        for (const [at, then] of audiences(before).entries()) {
          // Whoever had the seat may have lost it since.
          for (const listening of [then.listening && audiences(now)[at]!.listening, null]) {
            const is = { state: now, listening };
            const table = deltaBetween(then, is, facts);
            const message = { kind: 'delta', after: before.seq, seq: now.seq, table };
            const { text, size } = texts.write(then, is);
            if (text !== JSON.stringify(message)) expect(text).toBe(JSON.stringify(message));
            expect(size).toBe(JSON.stringify({ ...message, table: widest(table) }).length);
            compared++;
          }
        }
      }
    }
    expect(compared).toBeGreaterThan(300);
  });
});
